import type { InspiredCurve, InspiredPoint } from './inspired-carbon-dioxide.ts';

const W_PER_BTU_PER_H = 0.293_071_07;
const PA_PER_MMHG = 133.322_387_415;
const point = (btuPerH: number, mmHg: number, deviationMmHg: number): InspiredPoint => ({
  metabolicW: btuPerH * W_PER_BTU_PER_H,
  meanPa: mmHg * PA_PER_MMHG,
  deviationPa: deviationMmHg * PA_PER_MMHG,
});

/**
 * CO2 breathed in by nineteen people in one sort of suit, time-weighted means: an example to start from, for a suit that was measured
 * itself. The source's resting value (4.75 ± 1.03 mmHg) states no work rate and is left out.
 * @source [KIM20] abstract
 */
export const PUBLISHED_INSPIRED_CURVE: InspiredCurve = {
  points: [point(1000, 8.09, 1.39), point(2000, 11.39, 1.26), point(3000, 14.36, 1.29)],
  source: '[KIM20] abstract',
};
