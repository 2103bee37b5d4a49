import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { STATION } from './read-text.ts';

const TEXT = `${STATION}
hardware j1 kind=power-connector at=bay state=mated controls=bus-off
hardware lid kind=cover at=bay state=closed
hardware b1 kind=bolt at=bay state=torqued turns=8
task work rank=1 {
    stint open-up "Open up" who=EV1 at=bay { open lid; demate j1 }
    stint turn "Turn the bolt" who=EV1 at=bay { release b1 }
}
`;

let folder = '';
let file = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'show-'));
  file = join(folder, 'yard.kdl');
  writeFileSync(file, TEXT);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The command's own module, by address: the apps are no library that a test could name. */
const module = new URL('../../../apps/cli/src/commands/show.ts', import.meta.url).pathname;

/** What the command prints. */
async function show(...args: readonly string[]): Promise<string> {
  const { register } = (await import(module)) as { register: (program: Command) => void };
  let out = '';
  const written = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += String(text);
    return true;
  });
  try {
    const program = new Command().exitOverride();
    register(program);
    program.parse(['node', 'handrail', 'show', file, ...args]);
  } finally {
    written.mockRestore();
  }
  return out;
}

describe('handrail show', () => {
  test('lists stints and hardware, without colours', async () => {
    const out = await show();
    expect(out).toContain('work/open-up');
    expect(out).toMatch(/j1 +│ power-connector +│ bay +│ +│ mating mated +│ bus-off/);
    expect(out.includes(String.fromCodePoint(27))).toBe(false);
  });

  test('--states says what each step needs and leaves, and what is left open', async () => {
    const out = await show('--states');
    expect(out).toContain('  open-up step 2 demate j1: needs j1 = mated (stated); leaves j1 = demated; under bus-off');
    expect(out).toContain('cannot tell: release b1 (bolt): no tool fits (power-tool or ratchet)');
    expect(out.trimEnd().endsWith('1 left open: search for "cannot tell"')).toBe(true);
  });

  test('--kind shows only that kind, its verbs and the stints that touch it', async () => {
    const out = await show('--kind', 'cover');
    expect(out).toContain('work/open-up');
    expect(out).not.toContain('work/turn');
    expect(out).not.toContain('power-connector');
    expect(out).toContain('30 / 75 / 150 s');
  });

  test('--json gives the same as data', async () => {
    const data = JSON.parse(await show('--states', '--json')) as {
      campaign: string;
      states: { stint: string; lines: { step: number | null; kind: string; text: string }[] }[];
    };
    expect(data.campaign).toBe('yard');
    expect(data.states.find((one) => one.stint === 'work/open-up')?.lines).toContainEqual({
      step: 1,
      kind: 'under',
      text: 'under bus-off',
      why: 'demate j1 (power connector)',
    });
  });

  test('a kind that the library does not have ends with the kinds that it has', async () => {
    await expect(show('--kind', 'bolts')).rejects.toThrow(/no kind "bolts"; it has .*captive-fastener/);
  });
});
