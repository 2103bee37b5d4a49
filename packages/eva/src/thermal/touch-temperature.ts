import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';

/** "Between `lowestK` and `highestK` a glove may touch for up to `contactS`"; null: for any time. The operator's figures; none is built in. */
export interface TouchLimit {
  readonly contactS: number | null;
  readonly lowestK: number;
  readonly highestK: number;
  readonly source: string;
}

export interface TouchExposure {
  /** Hardware id or words. */
  readonly of: string;
  /** Band that the surface may have then. */
  readonly surfaceK: { readonly low: number; readonly high: number };
  /** Longest unbroken touch in the step, s. */
  readonly contactS: number;
}

export interface TouchVerdict {
  readonly of: string;
  /** Longest touch that the limits allow over the whole band of temperatures, s; null: any time; 0: none. */
  readonly allowedS: number | null;
  readonly holds: boolean;
  /** Which end of the band is beyond the limit for a touch of that length; `too-long`: no limit allows so long a touch at all. null: it holds. */
  readonly because: 'too-hot' | 'too-cold' | 'too-hot-and-too-cold' | 'too-long' | null;
}

/**
 * Checks touches against the operator's touch-temperature limits. A touch is allowed for as long as the most generous limit whose band holds
 * the whole band of the surface; between limits nothing is interpolated.
 * @throws Fault `thermal/no-touch-limits` for an empty list; `thermal/touch-limits-cross` where a longer touch has a wider band
 * @checked tests/reference/thermal/touch-temperature.test.ts
 */
export function touchVerdicts(
  limits: readonly TouchLimit[],
  exposures: readonly TouchExposure[],
): readonly TouchVerdict[] {
  const ordered = requireTouchLimits(limits);
  return exposures.map(({ of, surfaceK, contactS }) => {
    const low = requireInRange(`${of}: surface temperature`, surfaceK.low, { min: 3, max: 1000, unit: 'K' });
    const high = requireInRange(`${of}: surface temperature`, surfaceK.high, { min: low, max: 1000, unit: 'K' });
    const asked = requireInRange(`${of}: contact`, contactS, { min: 0, max: 86_400, unit: 's' });
    const holding = ordered.filter(({ lowestK, highestK }) => low >= lowestK && high <= highestK);
    const allowedS = holding.some((limit) => limit.contactS === null)
      ? null
      : Math.max(0, ...holding.map((limit) => limit.contactS as number));
    if (asked === 0 || allowedS === null || asked <= allowedS) return { of, allowedS, holds: true, because: null };
    // The limit that would have had to hold: the widest one that allows a touch of that length.
    const needed = ordered.find((limit) => limit.contactS === null || limit.contactS >= asked);
    if (needed === undefined) return { of, allowedS, holds: false, because: 'too-long' };
    const hot = high > needed.highestK;
    const cold = low < needed.lowestK;
    return { of, allowedS, holds: false, because: hot && cold ? 'too-hot-and-too-cold' : hot ? 'too-hot' : 'too-cold' };
  });
}

/** Limits sorted from the shortest touch to the longest, each band inside the one before. */
function requireTouchLimits(limits: readonly TouchLimit[]): readonly TouchLimit[] {
  if (limits.length === 0) {
    throw new Fault('thermal/no-touch-limits', 'no touch-temperature limits are stated, so no touch can be judged', {
      advice: 'state the operator’s limits; none is built in',
    });
  }
  const ordered = [...limits].sort(
    (a, b) => (a.contactS ?? Number.POSITIVE_INFINITY) - (b.contactS ?? Number.POSITIVE_INFINITY),
  );
  for (let i = 0; i < ordered.length; i++) {
    const limit = ordered[i] as TouchLimit;
    requireInRange('lowest touch temperature', limit.lowestK, { min: 3, max: 1000, unit: 'K' });
    requireInRange('highest touch temperature', limit.highestK, { min: limit.lowestK, max: 1000, unit: 'K' });
    if (limit.contactS !== null) requireInRange('contact time', limit.contactS, { min: 0.1, max: 86_400, unit: 's' });
    const shorter = ordered[i - 1];
    if (shorter !== undefined && (limit.lowestK < shorter.lowestK || limit.highestK > shorter.highestK)) {
      throw new Fault('thermal/touch-limits-cross', 'a longer touch may not have a wider band of temperatures', {
        values: { shorter: { ...shorter }, longer: { ...limit } },
      });
    }
  }
  return ordered;
}
