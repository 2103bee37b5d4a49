/**
 * Random small campaigns, written as the trade writes them and turned into models by `eva/schedule`: the engine and Chuffed, an
 * independent solver, agree on every level. HANDRAIL_ORACLE_SEEDS=50 compares more.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveWithChuffed } from '../../../benchmarks/solver/chuffed.ts';
import { planChecked } from '../../properties/schedule/plan-checked.ts';
import { randomCase } from '../../properties/schedule/random-campaign.ts';

const CASES = Number(process.env['HANDRAIL_ORACLE_SEEDS'] ?? '3');

describe('on random small campaigns the planner and Chuffed agree on rank, margin, finish and travel', () => {
  it.each(fc.sample(randomCase, { numRuns: CASES, seed: 20_310_914 }).map((value, index) => [index, value] as const))(
    'campaign %i',
    { timeout: 240_000 },
    async (_, { campaign, hardware }) => {
      const { evas } = planChecked(campaign, hardware, { skipReasons: true, sharingTries: 0 });
      let compared = 0;
      for (const { plan } of evas) {
        const { values, isClosed } = await solveWithChuffed(plan.evaModel.model, { timeS: 120 });
        expect({ isClosed, values }).toEqual({ isClosed: true, values: plan.levels.map(({ value }) => value) });
        compared += values.length;
      }
      expect(compared).toBeGreaterThan(0);
    },
  );
});
