/** Whatever a message points to with "handrail explain …" has a page, and nothing is explained that no message can name. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROBLEM_CODES } from '@handrail/eva/campaign/problem/problem-codes';
import { PROOF_CHECKS } from '@handrail/eva/proof/claim/proof-checks';
import { REPLAY_CHECKS } from '@handrail/eva/proof/replay/replay-checks';
import { rules } from '@handrail/eva/rules/rules.generated';
import { PLAN_CHECKS } from '@handrail/eva/schedule/plan-checks';
import { describe, expect, it } from 'vitest';
import { EXPLANATIONS } from '../../../apps/cli/src/explanations.ts';
import { FAULT_CODES } from '../../../apps/cli/src/fault-codes.ts';
import { EXAMPLE_LINES } from '../../../apps/cli/src/help-end.ts';

const ROOT = join(import.meta.dirname, '../../..');
const FOLDERS = ['packages/quantity/src', 'packages/eva/src', 'packages/wire/src', 'apps/cli/src'];

const sources = FOLDERS.flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(ROOT, folder, name), 'utf8')),
);
const explained = new Map(EXPLANATIONS.map((entry) => [entry.id, entry] as const));

describe('handrail explain', () => {
  it('knows every rule, replay check, proof check, check of planning and problem of a text', () => {
    const ids = [
      ...[...rules, ...REPLAY_CHECKS, ...PROOF_CHECKS, ...PLAN_CHECKS].map(({ id }) => id),
      ...Object.keys(PROBLEM_CODES).map((code) => `campaign/${code}`),
    ];
    expect(ids.filter((id) => !explained.has(id))).toEqual([]);
  });

  it('knows every id that the sources give a finding', () => {
    // An id stands in quotes: behind "rule:", or handed to what makes the finding.
    const quoted = /\brule: '([a-z-]+\/[a-z-]+)'|'((?:replay|proof|schedule|wayhome)\/[a-z-]+)'/g;
    const ids = sources.flatMap((text) => [...text.matchAll(quoted)].map(([, one, other]) => one ?? other ?? ''));
    expect(new Set(ids).size).toBeGreaterThan(60);
    expect([...new Set(ids)].filter((id) => !explained.has(id))).toEqual([]);
  });

  it('knows the code of every fault that the sources throw, and no other', () => {
    const codes = new Set(
      sources.flatMap((text) =>
        [...text.matchAll(/new Fault\(\s*['`]([a-z]+\/[a-z-]+)/g)].map(([, code = '']) => code),
      ),
    );
    expect([...codes].filter((code) => !explained.has(code) && !code.endsWith('-'))).toEqual([]);
    // A code that is put together ends in a hyphen here: its pages begin like it.
    const isThrown = (code: string): boolean =>
      codes.has(code) || [...codes].some((start) => start.endsWith('-') && code.startsWith(start));
    // Codes that are handed to a function which throws stand in quotes somewhere else than behind the word Fault.
    const isWritten = (code: string): boolean =>
      sources.filter((text) => text.includes(`'${code}'`)).length > 1 || code.startsWith('wire/');
    expect(Object.keys(FAULT_CODES).filter((code) => !isThrown(code) && !isWritten(code))).toEqual([]);
  });

  it('says each id once, with a reason that is a sentence', () => {
    expect(explained.size).toBe(EXPLANATIONS.length);
    const bare = EXPLANATIONS.filter(
      ({ why, title }) => title.length < 3 || !/^[A-Z0-9"].{15,}[.?!]$/s.test(why.trim()),
    );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it('and help: every command shows how it is typed', () => {
    const registered = readFileSync(join(ROOT, 'apps/cli/src/commands.ts'), 'utf8');
    const names = [...registered.matchAll(/commands\/([a-z-]+)\.ts'/g)].map(([, name = '']) => name);
    expect(names.length).toBeGreaterThan(10);
    expect(names.filter((name) => EXAMPLE_LINES[name] === undefined)).toEqual([]);
  });
});
