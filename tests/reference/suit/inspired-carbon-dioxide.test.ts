import { describe, expect, it } from 'vitest';
import { inspiredCarbonDioxidePa } from '@handrail/eva/suit/inspired-carbon-dioxide';
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
});
