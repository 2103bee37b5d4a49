import { describe, expect, it } from 'vitest';
import { inspiredCarbonDioxidePa } from '@handrail/eva/suit/inspired-carbon-dioxide';
import { between } from '@handrail/quantity/sourced-value';
import { supplyUse } from '@handrail/eva/suit/supply-use';
import { completeSuit } from '@handrail/eva/suit/suit-specification';
import { BTU_PER_H_IN_W, INVENTED_PERSON, INVENTED_SUIT, PA_PER_MMHG } from './invented-suit.ts';

const suit = completeSuit(INVENTED_SUIT);
const curve = suit.inspiredCurve ?? { points: [], source: '' };

describe('CO2 breathed in', () => {
  it.each([
    [1000, 8.09, 1.39], // BTU/h, mmHg, mmHg [KIM20]
    [2000, 11.39, 1.26], // BTU/h, mmHg, mmHg [KIM20]
    [3000, 14.36, 1.29], // BTU/h, mmHg, mmHg [KIM20]
    [1500, 9.74, 1.325], // BTU/h, mmHg, half-way between the first two [KIM20]
  ])('at %f BTU/h is %f ± %f mmHg', (btuPerH, mmHg, deviation) => {
    const { meanPa, deviationPa } = inspiredCarbonDioxidePa(curve, btuPerH * BTU_PER_H_IN_W);
    expect(Math.abs(meanPa / PA_PER_MMHG - mmHg)).toBeLessThan(0.01);
    expect(Math.abs(deviationPa / PA_PER_MMHG - deviation)).toBeLessThan(0.01);
  });

  it('is refused beyond the measured work rates, with the range in the message', () => {
    expect(() => inspiredCarbonDioxidePa(curve, 900)).toThrow(/must be 293.* to 879.* W, got 900 W/);
  });

  it('warns in the plan where the curve passes the suit level, and is unknown where nothing was measured', () => {
    const use = supplyUse(
      suit,
      INVENTED_PERSON,
      [
        { startS: 0, endS: 3600, effort: 'steady' }, // 8.09 + 1.39 mmHg = 1264 Pa: below 1500 Pa
        { startS: 3600, endS: 5400, effort: 'hard' }, // 14.36 mmHg = 1914 Pa: above
        { startS: 5400, endS: 7200, effort: 'brisk' }, // 11.39 mmHg = 1519 Pa: above
        { startS: 7200, endS: 9000, effort: 'spread' }, // 200 W at its least, below the first point
      ],
      { startS: 0, endS: 9000, idleEffort: null, beyondS: 0, beyondEffort: 'steady' },
    );
    expect(use.inspired.map(({ warns }) => warns)).toEqual(['no', 'likely', 'likely', 'unknown']);
    expect(use.inspired[3]?.reason).toContain('293 to 879 W');
  });

  it('warns at worst where only a hard-working person in the upper part of the spread passes the least level', () => {
    // likely 350 W × 1.1 = 385 W; worst 400 W × 1.2 = 480 W, plus one deviation between people
    const one = (level: { readonly low: number; readonly likely: number; readonly high: number }) =>
      supplyUse(
        completeSuit({
          ...INVENTED_SUIT,
          constants: { ...INVENTED_SUIT.constants, carbonDioxideWarningPa: { ...level, source: 'operator' } },
          effortsW: { busy: between(320, 350, 400, 'operator') },
        }),
        { ...INVENTED_PERSON, effortFactor: between(1, 1.1, 1.2, 'operator') },
        [{ startS: 0, endS: 600, effort: 'busy' }],
        { startS: 0, endS: 600, idleEffort: null, beyondS: 0, beyondEffort: 'busy' },
      ).inspired[0];
    const slope = (11.39 - 8.09) / 1000; // mmHg per BTU/h [KIM20]
    const likelyMmHg = 8.09 + slope * (385 / BTU_PER_H_IN_W - 1000);
    const worstBtu = 480 / BTU_PER_H_IN_W - 1000;
    const worstMmHg = 8.09 + slope * worstBtu + 1.39 + ((1.26 - 1.39) / 1000) * worstBtu;
    const row = one({ low: 1400, likely: 1500, high: 1600 });
    expect(row?.metabolicW).toEqual({ likely: 350 * 1.1, worst: 400 * 1.2 });
    expect(row?.inspiredPa?.likely).toBeCloseTo(likelyMmHg * PA_PER_MMHG, 6);
    expect(row?.inspiredPa?.worst).toBeCloseTo(worstMmHg * PA_PER_MMHG, 6);
    expect(row?.warns).toBe('at-worst');
    const above = worstMmHg * PA_PER_MMHG + 1;
    expect(one({ low: above, likely: above, high: above })?.warns).toBe('no');
    expect(one({ low: above - 2, likely: above, high: above })?.warns).toBe('at-worst');
    expect(one({ low: 1000, likely: likelyMmHg * PA_PER_MMHG - 1, high: 2000 })?.warns).toBe('likely');
  });
});
