/** Each plan replays clean for its planning figures, and each is refused, in words that name what breaks. */
import { readdirSync, readFileSync } from 'node:fs';
import { PROOF_CHECKS } from '@handrail/eva/proof/claim/proof-checks';
import { prove } from '@handrail/eva/proof/claim/prove';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { describe, expect, it } from 'vitest';
import { nominal } from './nominal.ts';
import { CHANGE_CASES } from './change-cases.ts';
import { NEED_CASES } from './need-cases.ts';
import { OUTSIDE_CASES } from './outside-cases.ts';
import { RESPONSE_CASES } from './response-cases.ts';
import { TIMING_CASES } from './timing-cases.ts';
import { WAY_CASES } from './way-cases.ts';

const CASES = [...NEED_CASES, ...CHANGE_CASES, ...OUTSIDE_CASES, ...WAY_CASES, ...RESPONSE_CASES, ...TIMING_CASES];

describe('a plan that holds for its planning figures alone', () => {
  it('comes in more than thirty kinds, no two alike', () => {
    expect(CASES.length).toBeGreaterThan(30);
    expect(new Set(CASES.map(({ name }) => name)).size).toBe(CASES.length);
  });

  for (const { name, rule, says, stint, plan } of CASES) {
    it(`is refused where ${name}`, () => {
      const { campaign, model, timeline } = nominal(plan);
      const replayed = replayTimeline(campaign, model, timeline).filter(({ severity }) => severity === 'error');
      expect(formatFindings(replayed)).toBe('');
      const stamp = prove(campaign, model, timeline, { mostScale: 1 });
      expect(stamp.verdict).not.toBe('checked');
      const found = stamp.findings.filter((finding) => finding.rule === rule);
      expect(found.map(({ why }) => why).join('\n'), formatFindings(stamp.findings)).toContain(says);
      expect(found.every(({ mend }) => mend !== null)).toBe(true);
      if (stint !== undefined) expect(found.map(({ where }) => where.stint)).toContain(stint);
      const expected = PROOF_CHECKS.find(({ id }) => id === rule)?.severity;
      expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set([expected]));
      // Where only the order was missing, the holds that are proposed put it right.
      const [eva] = stamp.evas;
      if (eva !== undefined && eva.proposedHolds.length > 0) {
        const again = prove(campaign, model, timeline, { mostScale: 1, holds: eva.proposedHolds });
        expect(again.evas[0]?.raceFree).toBe(true);
      }
    });
  }
});

describe('the list of proof checks', () => {
  it('is that of the findings that the proofs can make', () => {
    const root = new URL('../../../packages/eva/src/proof/', import.meta.url);
    const checked = new Set<string>();
    for (const folder of ['network', 'race', 'control', 'claim']) {
      for (const file of readdirSync(new URL(folder, root))) {
        if (file === 'proof-checks.ts') continue;
        const text = readFileSync(new URL(`${folder}/${file}`, root), 'utf8');
        for (const [, rule] of text.matchAll(/'(proof\/[a-z-]+)'/g)) checked.add(rule as string);
      }
    }
    expect(PROOF_CHECKS.map(({ id }): string => id).sort()).toEqual([...checked].sort());
  });
});
