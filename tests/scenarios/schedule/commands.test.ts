/** The commands plan and compare as a person runs them: what is printed where, and what the process says to a script. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { describe, expect, it } from 'vitest';

interface CommandFile {
  readonly register: (program: Command) => void;
}
/** The command line is an application, not a package: it is loaded from where it stands. */
const commandFile = async (name: string) =>
  (await import(new URL(`../../../apps/cli/src/commands/${name}.ts`, import.meta.url).pathname)) as CommandFile;
const commands = [await commandFile('plan'), await commandFile('compare')];

const folder = mkdtempSync(join(tmpdir(), 'handrail-'));

/** Runs the commands in this process; what they write is caught on its way out. */
async function handrail(...words: string[]): Promise<{ status: number; stdout: string; stderr: string }> {
  const program = new Command('handrail').exitOverride();
  for (const { register } of commands) register(program);
  const [out, err] = [caught(process.stdout), caught(process.stderr)];
  let status = 0;
  let last = '';
  try {
    await program.parseAsync(['node', 'handrail', ...words]);
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'ExitError') throw error;
    status = (error as Error & { code: number }).code;
    last = error.message;
  } finally {
    out.release();
    err.release();
  }
  return { status, stdout: out.text(), stderr: err.text() + last };
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

/** Lines are broken to the width of the terminal; the words are what counts. */
function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}

function write(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, `handrail 1\ncampaign small "Small"\n${text}`);
  return file;
}

const EVA = 'eva one egress="2031-09-14T11:40:00Z" longest="2 h"';
const two = write(
  'two.kdl',
  `${EVA}\ntask a rank=1 { stint x who=EV1 { minutes 20 } }\ntask b rank=2 { stint y who=EV1 { minutes 25 } }\n`,
);
const pinned = write(
  'pinned.kdl',
  `${EVA}\ntask a rank=1 { stint x who=EV1 { minutes 20 } }\ntask b rank=2 { stint y who=EV1 { minutes 25 } }\npin "b/y" start="0:05"\n`,
);

describe('handrail plan', () => {
  it('writes the timeline, prints it with its claim, and ends with 0', async () => {
    const out = join(folder, 'two.json');
    const { status, stdout } = await handrail('plan', two, '-o', out);
    expect(status).toBe(0);
    // 20 and 25 min by one person, nothing else.
    expect(oneLine(stdout)).toMatch(
      /optimal for these durations: both in at \D*0:45\D.*1 h 15 min before the wall at \D*2:00\D/,
    );
    const timeline = JSON.parse(readFileSync(out, 'utf8')) as { format: string; evas: { bothInS: number }[] };
    expect(timeline.format).toBe('handrail-timeline');
    expect(timeline.evas[0]?.bothInS).toBe(45 * 60);
  });

  it('answers as JSON with nothing else on stdout, pins priced', async () => {
    const { status, stdout } = await handrail('plan', pinned, '--json', '--price-pins');
    const answer = JSON.parse(stdout) as { pins: { laterS: Record<string, number> }[] };
    expect(status).toBe(0);
    // b from 0:05 to 0:30 and a after it: 0:50 instead of 0:45.
    expect(answer.pins[0]?.laterS).toEqual({ one: 5 * 60 });
  });

  it('ends with 2 for a text with errors, an unknown EVA, a number that is none', async () => {
    expect((await handrail('plan', write('bad.kdl', 'eva one egress="yesterday"\n'))).status).toBe(2);
    expect(await handrail('plan', two, '--eva', 'third')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('"third"'),
    });
    expect((await handrail('plan', two, '--seed', 'x')).status).toBe(2);
  });

  it('ends with 3 and the colliding requirements when minimum success cannot be reached', async () => {
    const { status, stdout } = await handrail('plan', 'examples/cannot-fit.kdl');
    expect(status).toBe(3);
    expect(oneLine(stdout)).toMatch(
      /left out swap-box .*collides with .*the clock "Box without power" \(at most 20 min\)/,
    );
  });
});

describe('handrail compare', () => {
  it('tells which stints moved by how much, and nothing of those that did not', async () => {
    const { status, stdout } = await handrail('compare', two, pinned);
    expect(status).toBe(0);
    expect(stdout).toContain('EVA one: both in 5 min later');
    expect(stdout).toMatch(/changed {4}b\/y: (\d+ min (later|earlier))/);
    expect((await handrail('compare', two, two)).stdout).toBe('no change\n');
  });

  it('tells what changed in the text, in words and with units', async () => {
    const longer = write(
      'longer.kdl',
      `${EVA.replace('2 h', '3 h')}\ntask a rank=1 { stint x who=EV1 { minutes 30 } }\ntask b rank=2 { stint y who=EV1 { minutes 25 } }\ntask c rank=3 { stint z who=EV2 { minutes 5 } }\n`,
    );
    const { stdout } = await handrail('compare', two, longer);
    expect(stdout).toContain('changed    EVA one: longestS 2 h → 3 h');
    expect(stdout).toContain('changed    stint a/x: duration.agreedS 20 min → 30 min');
    expect(stdout).toContain('added      stint c/z');
    expect(stdout).toContain('task in    c');
    expect(stdout).toContain('EVA one: both in 10 min later');
  });
});
