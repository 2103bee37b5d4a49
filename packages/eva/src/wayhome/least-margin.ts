/** The least margin of a mode over an EVA, and whether it is the margin or only what it cannot exceed. */
import type { Mode } from './way-home-state.ts';
import type { SurfaceSample, WayHomeSurface } from './way-home-surface.ts';
import { isWhole } from './worst-over-pairs.ts';

export interface LeastMargin {
  readonly sample: SurfaceSample;
  readonly marginS: number;
  /** false: somewhere in the EVA a pair of progress is unknown or committed, so the margin is `marginS` or less. */
  readonly isWhole: boolean;
}

/** @returns null: no limit is stated, or from no minute is a way home known */
export function leastMargin({ samples }: Pick<WayHomeSurface, 'samples'>, mode: Mode): LeastMargin | null {
  let least: Omit<LeastMargin, 'isWhole'> | null = null;
  for (const sample of samples) {
    const marginS = sample.marginAtMostS[mode];
    if (marginS !== null && (least === null || marginS < least.marginS)) least = { sample, marginS };
  }
  return least === null ? null : { ...least, isWhole: samples.every(({ worst }) => isWhole(worst[mode])) };
}
