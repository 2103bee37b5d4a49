/** The commands sky, light and slip as a person runs them: what is printed and what the process says to a script. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { answers } from '@handrail/wire/answers.generated';
import { Command } from 'commander';
import { afterAll, describe, expect, test } from 'vitest';
import { FULMAR, plannedFulmar } from '../../support/planned-fulmar.ts';

interface CommandFile {
  readonly register: (program: Command) => void;
}
const commandFile = async (name: string) =>
  (await import(new URL(`../../../apps/cli/src/commands/${name}.ts`, import.meta.url).pathname)) as CommandFile;
const commands = await Promise.all(['sky', 'light', 'slip'].map(commandFile));
const folder = mkdtempSync(join(tmpdir(), 'handrail-sky-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs a command in this process; what it writes is caught on its way out. */
async function handrail(...words: string[]): Promise<{ status: number; out: string; last: string }> {
  const program = new Command('handrail').exitOverride();
  for (const { register } of commands) register(program);
  const write = process.stdout.write.bind(process.stdout);
  let out = '';
  process.stdout.write = (chunk: string | Uint8Array) => {
    out += typeof chunk === 'string' ? chunk : new TextDecoder().decode(chunk);
    return true;
  };
  try {
    await program.parseAsync(['node', 'handrail', ...words]);
    return { status: 0, out, last: '' };
  } catch (error) {
    if (!(error instanceof Error) || error.name !== 'ExitError') throw error;
    return { status: (error as Error & { code: number }).code, out, last: error.message };
  } finally {
    process.stdout.write = write;
  }
}

/** The answer, checked against the schema that is published for it. */
function answerOf(command: string, out: string): Record<string, unknown> {
  const definition = answers.find((one) => one.command === command);
  return definition?.schema.parse(JSON.parse(out)) as Record<string, unknown>;
}
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const BARE = file(
  'bare.kdl',
  'handrail 1\ncampaign c "C"\neva one egress="2031-09-14T11:40:00Z"\ntask t { stint s who=EV1 { minutes 10 } }\n',
);

describe('handrail sky', () => {
  test('tells the age of the elements, beta, nights, contacts and the proxy of every EVA', async () => {
    const { status, out } = await handrail('sky', FULMAR);
    expect(status).toBe(0);
    // Epoch 2031-09-13 18:00; PET 0 of Mast is 17 h 40 min after it.
    expect(out).toContain('elements 0.7 d old');
    expect(out.match(/beta -?\d+\.\d°/g)).toHaveLength(3);
    expect(out).toContain('relay-east');
    expect(out).toMatch(/weak field under 24000 nT, a proxy/);
    expect(out).toContain('the field is that of 2029-11-13');
  });

  test('answers as its schema promises; gaps and contacts of the answer fill the time between them', async () => {
    const { out } = await handrail('sky', FULMAR, '--json');
    const answer = answerOf('sky', out) as {
      evas: { radio: { coveredFraction: number; gaps: { fromS: number; toS: number }[] } }[];
    };
    expect(answer.evas).toHaveLength(3);
    for (const { radio } of answer.evas) {
      // 6 h 30 min and 15 min of slip.
      const gapS = radio.gaps.reduce((sum, gap) => sum + gap.toS - gap.fromS, 0);
      expect(1 - gapS / (405 * 60)).toBeCloseTo(radio.coveredFraction, 2);
    }
  });

  test('without an orbit it cannot tell', async () => {
    const { status, last } = await handrail('sky', BARE);
    expect([status, last]).toEqual([4, 'no orbit is stated, so nothing can be said of the sky: write orbit { … }']);
  });
});

describe('handrail light', () => {
  test('spans of a place follow one another without gaps through the EVA', async () => {
    const { out } = await handrail('light', FULMAR, '--place', 'pump-bay', '--eva', 'pump', '--json');
    const { places } = answerOf('light', out) as { places: { spans: { fromS: number; toS: number }[] }[] };
    const spans = places[0]?.spans ?? [];
    expect(spans.length).toBeGreaterThan(10);
    expect([spans[0]?.fromS, spans.at(-1)?.toS]).toEqual([0, 435 * 60]);
    for (const [k, span] of spans.slice(1).entries()) expect(span.fromS).toBe(spans[k]?.toS);
  });

  test('shows the height of the Sun where the surface is stated, and says where it is not', async () => {
    expect((await handrail('light', FULMAR, '--place', 'pump-bay', '--eva', 'pump')).out).toMatch(/0° > 7\d° > 0°/);
    expect((await handrail('light', FULMAR, '--place', 'spine-1', '--eva', 'pump')).out).toContain('surface not');
  });

  test('a place that does not exist is refused with those that do', async () => {
    const { status, last } = await handrail('light', FULMAR, '--place', 'pumpbay');
    expect(status).toBe(2);
    expect(last).toContain('pump-bay');
  });

  test('without an orbit it cannot tell', async () => {
    expect((await handrail('light', BARE)).status).toBe(4);
  });
});

describe('handrail slip', () => {
  const timeline = file('timeline.json', JSON.stringify(plannedFulmar().timeline));

  test('answers as its schema promises, a row a step', async () => {
    const { out } = await handrail('slip', FULMAR, timeline, '--step', '15', '--most', '30', '--json');
    const { evas } = answerOf('slip', out) as { evas: { rows: { lateS: number }[] }[] };
    expect(evas.map(({ rows }) => rows.map(({ lateS }) => lateS))).toEqual([0, 1, 2].map(() => [0, 900, 1800]));
  });

  test('says in words what breaks', async () => {
    const { out } = await handrail('slip', FULMAR, timeline, '--step', '30');
    expect(out).toMatch(/EVA harvest: .*last acceptable egress/);
    expect(out).toContain('the text states a slip of 15 min');
  });

  test('a step of nothing is refused', async () => {
    expect((await handrail('slip', FULMAR, timeline, '--step', '0')).status).toBe(2);
    expect((await handrail('slip', FULMAR)).status).toBe(2);
  });
});
