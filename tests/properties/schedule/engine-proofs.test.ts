/** "Optimal for these durations" rests on a proof that a second program accepts. */
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { checkProof } from '@handrail/solver-checker/check-proof';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomCase } from './random-campaign.ts';

describe('the claim of a planned EVA', () => {
  it('is proved to the independent checker, level by level', () => {
    fc.assert(
      fc.property(randomCase, ({ campaign, hardware }) => {
        let lines = new KeptLines();
        const proofFor = () => {
          lines = new KeptLines();
          return lines;
        };
        const running = planCampaign(campaign, hardware, { seed: 1, skipReasons: true, proofFor });
        let next = running.next();
        while (next.done !== true) next = running.next();
        const [outcome] = next.value.evas;
        if (outcome === undefined) throw new Error('no EVA');
        const verdict = checkProof(outcome.plan.evaModel.model, lines);
        expect(verdict.refusal).toBe(null);
        expect(verdict.claim).toBe(outcome.plan.status);
        expect(verdict.closed).toEqual(outcome.plan.levels.map(({ value }) => value));
      }),
      { numRuns: 60, seed: 9 },
    );
  });
});
