import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { type Thread, threadGeometry } from './thread-geometry.ts';

const LOAD = { min: 0, max: 5e6, unit: 'N' } as const;
const TORQUE = { min: 0, max: 5000, unit: 'N·m' } as const;
const DIAMETER = { min: 0.0015, max: 0.1, unit: 'm' } as const;
const NUT_FACTOR = { min: 0.03, max: 1, unit: '1' } as const;

/**
 * Published nut factors K of T = K F d, by what is on the thread: a place to start from. A screw's own figure comes from tests.
 * @source [SHIGLEY9] Table 8-15
 */
export const PUBLISHED_NUT_FACTORS: Readonly<Record<string, number>> = {
  'black, not plated': 0.3,
  'zinc plated': 0.2,
  lubricated: 0.18,
  'cadmium plated': 0.16,
  'anti-seize compound': 0.12,
  'low-friction nut': 0.09,
};

/** Torque in N·m for a preload: T = K F d. @source [SHIGLEY9] Eq. 8-27 */
export function torqueForPreloadNm(preloadN: number, diameterM: number, nutFactor: number): number {
  return (
    requireInRange('nut factor', nutFactor, NUT_FACTOR) *
    requireInRange('preload', preloadN, LOAD) *
    requireInRange('thread diameter', diameterM, DIAMETER)
  );
}

/**
 * Preload in N that a torque leaves, as a band: the nut factor decides, and it is known only within its own band (scatter by torque
 * control is typically ±25 % lubricated and ±35 % as received).
 * @source [SHIGLEY9] Eq. 8-27; scatter [5020A] MEMORY
 */
export function preloadFromTorqueN(
  torqueNm: number,
  diameterM: number,
  nutFactor: SourcedValue,
): { readonly low: number; readonly likely: number; readonly high: number } {
  const torque = requireInRange('torque', torqueNm, TORQUE);
  const diameter = requireInRange('thread diameter', diameterM, DIAMETER);
  for (const edge of [nutFactor.low, nutFactor.likely, nutFactor.high]) requireInRange('nut factor', edge, NUT_FACTOR);
  return {
    low: torque / (nutFactor.high * diameter),
    likely: torque / (nutFactor.likely * diameter),
    high: torque / (nutFactor.low * diameter),
  };
}

/**
 * Torque in N·m from friction at thread and under the head, the long form: lifting torque of the helix plus collar friction.
 * @param meanDiameterM effective diameter of the thread: the pitch diameter by rights; handbooks take the mean of major and root diameter
 * @param collarDiameterM mean diameter of the friction under head or nut
 * @source [SHIGLEY9] Eq. 8-26 (thread angle 30°)
 */
export function torqueFromFrictionNm(
  preloadN: number,
  thread: Thread,
  friction: { readonly thread: number; readonly collar: number },
  collarDiameterM: number,
  meanDiameterM: number = threadGeometry(thread).pitchDiameterM,
): number {
  const preload = requireInRange('preload', preloadN, LOAD);
  const collar = requireInRange('collar diameter', collarDiameterM, DIAMETER);
  const mean = requireInRange('mean thread diameter', meanDiameterM, DIAMETER);
  const f = requireInRange('thread friction', friction.thread, { min: 0, max: 1, unit: '1' });
  const fc = requireInRange('collar friction', friction.collar, { min: 0, max: 1, unit: '1' });
  const tanLead = thread.pitchM / (Math.PI * mean);
  const perCos = 1 / Math.cos(Math.PI / 6);
  const lift = (tanLead + f * perCos) / (1 - f * tanLead * perCos);
  return (preload * mean * lift) / 2 + (preload * fc * collar) / 2;
}

/** Mean and sample deviation of preloads measured at one torque, N, and their ratio: the scatter of that process. */
export function preloadScatter(preloadsN: readonly number[]): {
  readonly meanN: number;
  readonly deviationN: number;
  readonly relative: number;
} {
  requireInRange('number of preloads', preloadsN.length, { min: 2, max: 100_000, unit: '1' });
  for (const preload of preloadsN) requireInRange('preload', preload, { min: 1e-6, max: 5e6, unit: 'N' });
  const meanN = preloadsN.reduce((sum, x) => sum + x, 0) / preloadsN.length;
  const squares = preloadsN.reduce((sum, x) => sum + (x - meanN) ** 2, 0);
  const deviationN = Math.sqrt(squares / (preloadsN.length - 1));
  return { meanN, deviationN, relative: deviationN / meanN };
}
