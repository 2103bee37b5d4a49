/** `handrail prove` as a script sees it: what it prints and how it ends. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prove as answer } from '@handrail/wire/answers/prove';
import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** The command line is an application, not a package: it is loaded from where it stands. */
const { register } = (await import(new URL('../../../apps/cli/src/commands/prove.ts', import.meta.url).pathname)) as {
  readonly register: (program: Command) => void;
};
const folder = mkdtempSync(join(tmpdir(), 'handrail-prove-'));
const file = (name: string): string => join(folder, name);

const campaign = (minutes: string, more: string): string => `handrail 1
campaign two "Two at one cover"
person EV1 role=outside suit-limit="3 h" anchor=ring tether="20 m" carries=6
person EV2 role=outside suit-limit="3 h" anchor=ring tether="20 m" carries=6
person IV role=inside
limits {
  home-within "30 min"; partner-within "30 min"; glove-check "3 h"; pad-check "3 h"; tether-swap "1 min"
  restraint-ingress "1 min"; restraint-egress "1 min"; reaction "30 s"; margin "15 min"
}
vehicle station "Station" hatch=porch { place porch }
eva one "First EVA" egress="2031-09-14T11:40:00Z" longest="2 h" {
  out EV1 "8 min"; out EV2 "6 min"
  in EV2 "6 min"; in EV1 "6 min"; close-hatch "7 min"
}
hardware ring kind=anchor at=porch
hardware bag-1 kind=bag at=EV1
hardware cover-1 kind=cover at=porch state=closed
task look "Look behind the cover" {
  stint open-it who=EV1 at=porch { open cover-1; ${minutes} }
  stint look-in who=EV2 at=porch { inspect porch; need cover-1 open when=during; minutes low=4 likely=5 high=8 }
${more}
}
`;
const TIMELINE = `eva one
EV1 0:00-0:08 out
EV2 0:08-0:14 out
EV1 0:14-0:19 look/open-it
EV2 0:20-0:25 look/look-in
EV2 0:30-0:36 in
EV1 0:36-0:42 in
hatch 0:42-0:49
wall 2:00 longest EVA
`;
const JOIN = '  join "cover open" after=open-it before=look-in from=EV1 to=EV2';
const SPREAD = 'minutes low=4 likely=5 high=9';

/** Runs the command in this process; what it writes is caught on its way out. */
async function prove(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const program = new Command('handrail').exitOverride();
  register(program);
  const [out, err] = [caught(process.stdout), caught(process.stderr)];
  let code = 0;
  let last = '';
  try {
    await program.parseAsync(['node', 'handrail', 'prove', ...args]);
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'ExitError') throw error;
    code = (error as Error & { code: number }).code;
    last = error.message;
  } finally {
    out.release();
    err.release();
  }
  return { code, out: out.text(), err: err.text() + last };
}

function caught(stream: NodeJS.WriteStream) {
  const write = stream.write.bind(stream);
  let text = '';
  stream.write = (chunk: string | Uint8Array) => {
    text += typeof chunk === 'string' ? chunk : new TextDecoder().decode(chunk);
    return true;
  };
  return {
    text: () => text,
    release: () => {
      stream.write = write;
    },
  };
}

beforeAll(() => {
  writeFileSync(file('joined.kdl'), campaign(SPREAD, JOIN));
  writeFileSync(file('raced.kdl'), campaign(SPREAD, ''));
  writeFileSync(file('unbounded.kdl'), campaign('minutes 5', JOIN));
  writeFileSync(file('plan.txt'), TIMELINE);
  writeFileSync(file('joined.txt'), `${TIMELINE}join cover-open 0:19 0:20\n`);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('handrail prove', () => {
  it('ends with 0 and says "checked against R within D", never "safe"', async () => {
    const { code, out, err } = await prove(
      file('joined.kdl'),
      file('joined.txt'),
      '--move-spread',
      '0.9-1.2',
      '--modes',
      'terminate,abort',
    );
    expect(err).toBe('');
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /checked against \d+ requirements \(R\) within the stated durations \(D\)/,
    );
    expect(out.slice(out.indexOf('checked against'))).not.toMatch(/\bsafe\b/);
    expect(code).toBe(0);
  });

  it('ends with 4 where a way home in a listed mode is not known, and names the mode', async () => {
    const { code, out } = await prove(file('joined.kdl'), file('joined.txt'), '--move-spread', '0.9-1.2');
    expect(out.replace(/\s+/g, ' ')).toContain('Cannot tell whether there is a way home in mode assist on EVA one');
    expect(code).toBe(4);
  });

  it('ends with 1 where nothing keeps two people in order, and says how it breaks and what would mend it', async () => {
    const { code, out } = await prove(file('raced.kdl'), file('plan.txt'));
    const text = out.replace(/\s+/g, ' ');
    expect(text).toContain('Nothing keeps "Open it" (EV1) before "Look in" (EV2)');
    expect(text).toContain('It breaks');
    expect(text).toContain('join "open-it done" after=open-it before=look-in');
    expect(code).toBe(1);
  });

  it('ends with 4 where nobody has said how long the work may take', async () => {
    const { code, out } = await prove(file('unbounded.kdl'), file('joined.txt'), '--json');
    const said = answer.schema.parse(JSON.parse(out));
    expect(said.verdict).toBe('cannot tell');
    expect(said.evas[0]?.unbounded).toEqual(['look/open-it']);
    expect(said.exitCode).toBe(4);
    expect(code).toBe(4);
  });

  it('ends with 2 where the spread of ways is no spread', async () => {
    const { code, err } = await prove(file('joined.kdl'), file('joined.txt'), '--move-spread', '1.2-0.9');
    expect(err).toContain('0.9-1.3');
    expect(code).toBe(2);
  });
});
