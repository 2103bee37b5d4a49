import { requireInRange } from '@handrail/quantity/in-range';

/** Water vapour at body temperature, 47 mmHg. */
export const BODY_WATER_VAPOUR_PA = 47 * 133.322_387_415;

/**
 * Nitrogen pressure breathed, Pa: (P − vapour) × (1 − oxygen fraction). The convention matters: with `vapourPa` 0 ("dry") air at sea level
 * carries 80 kPa of nitrogen, with body water vapour 75 kPa, and every ratio falls by 5–6 %. Limits belong to the convention they were set in.
 * @source [C04] p. 33–34 for the dry convention
 */
export function nitrogenBreathedPa(pressurePa: number, oxygenFraction: number, vapourPa: number): number {
  const pressure = requireInRange('pressure', pressurePa, { min: 0, max: 1e6, unit: 'Pa' });
  const oxygen = requireInRange('oxygen fraction', oxygenFraction, { min: 0, max: 1, unit: '1' });
  const vapour = requireInRange('water vapour', vapourPa, { min: 0, max: 10_000, unit: 'Pa' });
  return Math.max(0, pressure - vapour) * (1 - oxygen);
}

/** Oxygen pressure breathed in, Pa, saturated with water at body temperature. 0 where the pressure is below the vapour's. @source [E14] §5a */
export function inspiredOxygenPa(pressurePa: number, oxygenFraction: number): number {
  const pressure = requireInRange('pressure', pressurePa, { min: 0, max: 1e6, unit: 'Pa' });
  const oxygen = requireInRange('oxygen fraction', oxygenFraction, { min: 0, max: 1, unit: '1' });
  return Math.max(0, pressure - BODY_WATER_VAPOUR_PA) * oxygen;
}
