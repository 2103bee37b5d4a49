/** The plan of a small EVA is the best there is: held against trying everything, level by level. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exhaustivePlan } from './exhaustive-plan.ts';
import { planChecked } from './plan-checked.ts';
import { randomCase } from './random-campaign.ts';

describe('a plan called optimal', () => {
  it('has the tasks, the finish and the travel of the best plan found by trying everything', () => {
    fc.assert(
      fc.property(randomCase, ({ campaign, hardware, wallMin }) => {
        const best = exhaustivePlan(campaign, hardware, wallMin);
        const [plan] = planChecked(campaign, hardware, { skipReasons: true }).timeline.evas;
        expect(plan?.claim.status ?? null).toBe(best === null ? null : 'optimal for these durations');
        expect(plan?.tasks).toEqual(best?.tasks);
        expect((plan?.bothInS ?? 0) / 60).toBe(best?.bothInMin ?? 0);
        const travelS = plan?.claim.levels.find(({ name }) => name === 'travel')?.value ?? 0;
        expect(travelS / 60).toBe(best?.travelMin ?? 0);
      }),
      { numRuns: 90, seed: 20310105 },
    );
  });
});
