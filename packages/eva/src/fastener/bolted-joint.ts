import { requireInRange } from '@handrail/quantity/in-range';

const STIFFNESS = { min: 1e5, max: 1e11, unit: 'N/m' } as const;

/** A preloaded joint: bolt and clamped members as springs, N/m. */
export interface BoltedJoint {
  readonly boltStiffnessNPerM: number;
  readonly memberStiffnessNPerM: number;
}

/** Share of an outside load that the bolt takes: kb / (kb + km). @source [SHIGLEY9] §8-7 */
export function boltLoadShare(joint: BoltedJoint): number {
  const bolt = requireInRange('bolt stiffness', joint.boltStiffnessNPerM, STIFFNESS);
  return bolt / (bolt + requireInRange('member stiffness', joint.memberStiffnessNPerM, STIFFNESS));
}

/** Stress in the bolt, Pa, under preload and an outside pull that does not open the joint. @source [SHIGLEY9] §8-9 */
export function boltStressPa(joint: BoltedJoint, preloadN: number, outsideLoadN: number, stressAreaM2: number): number {
  const preload = requireInRange('preload', preloadN, { min: 0, max: 5e6, unit: 'N' });
  const outside = requireInRange('outside load', outsideLoadN, { min: 0, max: 5e6, unit: 'N' });
  const area = requireInRange('stress area', stressAreaM2, { min: 1e-7, max: 1e-2, unit: 'm²' });
  return (preload + boltLoadShare(joint) * outside) / area;
}

/** Preload of a joint that will be opened again: three quarters of the proof load. @source [SHIGLEY9] Eq. 8-31 */
export function reusablePreloadN(proofN: number): number {
  return 0.75 * requireInRange('proof load', proofN, { min: 0, max: 5e6, unit: 'N' });
}

/**
 * Turns from snug to a preload: bolt stretch plus member squeeze over the pitch. Snug is where all faces touch; embedding is not in it.
 * @source [SHIGLEY9] §8-8, turn-of-the-nut: N = (1/kb + 1/km) F / pitch
 */
export function turnsForPreload(joint: BoltedJoint, preloadN: number, pitchM: number): number {
  const bolt = requireInRange('bolt stiffness', joint.boltStiffnessNPerM, STIFFNESS);
  const member = requireInRange('member stiffness', joint.memberStiffnessNPerM, STIFFNESS);
  const preload = requireInRange('preload', preloadN, { min: 0, max: 5e6, unit: 'N' });
  return ((1 / bolt + 1 / member) * preload) / requireInRange('pitch', pitchM, { min: 0.0002, max: 0.01, unit: 'm' });
}

/**
 * Turns from snug by the structural table for flat faces: a third up to four diameters of length, a half up to eight, two thirds up to twelve.
 * null: longer than the table goes; measure it.
 * @source [RCSC] Table 8.1/8.2
 */
export function tabulatedTurns(lengthM: number, diameterM: number): number | null {
  const length = requireInRange('bolt length', lengthM, { min: 0.001, max: 2, unit: 'm' });
  const slenderness = length / requireInRange('thread diameter', diameterM, { min: 0.0015, max: 0.1, unit: 'm' });
  // A hair of slack, so that exactly four diameters in inches stays four in metres.
  if (slenderness <= 4 + 1e-9) return 1 / 3;
  if (slenderness <= 8 + 1e-9) return 1 / 2;
  return slenderness <= 12 + 1e-9 ? 2 / 3 : null;
}
