import { requireInRange } from '@handrail/quantity/in-range';

const PRESSURE_RANGE = { min: 0, max: 1e6, unit: 'Pa' } as const;
const HALF_TIME_RANGE = { min: 10, max: 1e6, unit: 's' } as const;
const DURATION_RANGE = { min: 0, max: 30 * 86_400, unit: 's' } as const;
const RAMP_RANGE = { min: -1e5, max: 1e5, unit: 'Pa/s' } as const;

/** Rate constant in 1/s of a tissue that closes half of any gap in `halfTimeS`, 10 s to 1e6 s. */
export function rateConstantPerS(halfTimeS: number): number {
  return Math.LN2 / requireInRange('half-time', halfTimeS, HALF_TIME_RANGE);
}

/**
 * Nitrogen tension of one exponential tissue after `durationS` in which the nitrogen breathed changes linearly (Schreiner's equation;
 * with `rampPaPerS` 0 the simple exponential): P = Pa + R (t − 1/k) − (Pa − P0 − R/k) e^(−kt). Exact for the model.
 * @param tissuePa tension at the start, Pa
 * @param breathedPa nitrogen pressure breathed at the start, Pa
 * @param rampPaPerS its change, Pa/s
 * @param ratePerS rate constant k, 1/s
 * @source [E14] Eq. 2 for the exponential; [SCHREINER] as worked in [DTENGU]
 * @checked tests/reference/prebreathe/tissue-nitrogen.test.ts (published values; small-step integration)
 */
export function tissueNitrogenPa(
  tissuePa: number,
  breathedPa: number,
  rampPaPerS: number,
  durationS: number,
  ratePerS: number,
): number {
  const start = requireInRange('tissue nitrogen', tissuePa, PRESSURE_RANGE);
  const breathed = requireInRange('nitrogen breathed', breathedPa, PRESSURE_RANGE);
  const ramp = requireInRange('change of nitrogen breathed', rampPaPerS, RAMP_RANGE);
  const t = requireInRange('time', durationS, DURATION_RANGE);
  const k = requireInRange('rate constant', ratePerS, { min: Math.LN2 / 1e6, max: Math.LN2 / 10, unit: '1/s' });
  // expm1 keeps the digits where the stage is short against the half-time.
  const grown = -Math.expm1(-k * t);
  return start + (breathed - start) * grown + ramp * (t - grown / k);
}

/**
 * Time in seconds at constant breathed nitrogen until the tissue has come down to `targetPa`. 0: it is there already.
 * null: never, because what is breathed holds it at or above the target.
 * @source [E14] Eq. 2, solved for time
 */
export function timeToTensionS(
  tissuePa: number,
  breathedPa: number,
  targetPa: number,
  ratePerS: number,
): number | null {
  requireInRange('tissue nitrogen', tissuePa, PRESSURE_RANGE);
  requireInRange('nitrogen breathed', breathedPa, PRESSURE_RANGE);
  requireInRange('target tension', targetPa, PRESSURE_RANGE);
  if (tissuePa <= targetPa) return 0;
  if (breathedPa >= targetPa) return null;
  return Math.log((tissuePa - breathedPa) / (targetPa - breathedPa)) / ratePerS;
}
