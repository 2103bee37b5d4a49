import { between, exactly } from '@handrail/quantity/sourced-value';
import type { PrebreatheStage, StageRole } from '@handrail/eva/prebreathe/prebreathe-protocol';
import type { TissueModel } from '@handrail/eva/prebreathe/tissue-model';

export const PSI = 6894.757_293_168;

/** The single 360 min tissue, dry convention, 29.6 kPa suit, as the published report sets it up. */
export const SLOW_TISSUE: TissueModel = {
  compartments: [
    {
      id: 'slow',
      halfTimeS: between(330 * 60, 360 * 60, 390 * 60, '[E14] Eq. 2; spread drawn for tests'),
      startNitrogenPa: between(11.0 * PSI, 11.6 * PSI, 11.6 * PSI, '[C04] p. 33'),
    },
  ],
  vapourPa: 0,
  suitPressurePa: 4.3 * PSI,
  ratioLimit: exactly(1.65, '[E14] §6a'),
  comparedDecimals: null,
  exerciseRatePerSPerVo2: null,
};

/** Stage at a constant pressure in psia with minutes; nitrogen is what oxygen leaves. */
export const stage = (
  role: StageRole,
  psia: number,
  oxygenFraction: number,
  minutes: number,
  exerciseVo2: number | null = null,
): PrebreatheStage => ({
  title: `${role} ${psia} psia ${minutes} min`,
  role,
  startPressurePa: psia * PSI,
  endPressurePa: psia * PSI,
  oxygenFraction,
  durationS: minutes * 60,
  exerciseVo2,
});
