import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';

const TEMPERATURE = { min: 3, max: 600, unit: 'K' } as const;
const TIME_CONSTANT = { min: 1, max: 1e7, unit: 's' } as const;

/**
 * What is known of a unit that stands without power or heaters. Either its owner states the minutes, or it is reckoned as one lump that
 * drifts towards what surrounds it.
 */
export type UnpoweredUnit =
  | { readonly kind: 'stated'; readonly id: string; readonly limitS: SourcedValue }
  | {
      readonly kind: 'lumped';
      readonly id: string;
      readonly startK: SourcedValue;
      /** What it drifts towards: cold in shade, hot in sun; the band must hold both ends that may occur. */
      readonly surroundingsK: SourcedValue;
      readonly timeConstantS: SourcedValue;
      /** Temperatures that it must not leave; null: none on that side. */
      readonly lowestK: number | null;
      readonly highestK: number | null;
    };

export interface UnpoweredLimit {
  readonly basis: 'stated' | 'lumped';
  /** Longest time without power, s; null: the limit is never reached in that case. The clock takes `worstS`. */
  readonly worstS: number | null;
  readonly likelyS: number | null;
  readonly bestS: number | null;
  /** Which end is met first in the worst case; null where stated, or never met. */
  readonly meets: 'lowest' | 'highest' | null;
}

/**
 * Temperature of one lump after `elapsedS`, K: Tₛ + (T₀ − Tₛ) e^(−t/τ). Good while the surroundings stay as they are and the range is small
 * enough for one time constant; radiating bodies cool more slowly as they get colder, so τ taken at the start is the cautious one for cold.
 * @source [INCROPERA7] §5.1
 * @checked tests/reference/thermal/unpowered-unit.test.ts (small-step integration)
 */
export function lumpedTemperatureK(
  startK: number,
  surroundingsK: number,
  timeConstantS: number,
  elapsedS: number,
): number {
  const start = requireInRange('start temperature', startK, TEMPERATURE);
  const surroundings = requireInRange('temperature of the surroundings', surroundingsK, TEMPERATURE);
  const tau = requireInRange('time constant', timeConstantS, TIME_CONSTANT);
  const elapsed = requireInRange('time without power', elapsedS, { min: 0, max: 1e8, unit: 's' });
  return surroundings + (start - surroundings) * Math.exp(-elapsed / tau);
}

/** Seconds until the lump reaches `limitK`; 0: it is there or beyond; null: never. */
export function timeToTemperatureS(
  startK: number,
  surroundingsK: number,
  timeConstantS: number,
  limitK: number,
): number | null {
  const start = requireInRange('start temperature', startK, TEMPERATURE);
  const surroundings = requireInRange('temperature of the surroundings', surroundingsK, TEMPERATURE);
  const tau = requireInRange('time constant', timeConstantS, TIME_CONSTANT);
  const limit = requireInRange('limit temperature', limitK, TEMPERATURE);
  if (start === limit) return 0;
  // Reached only if the limit lies between the start and the surroundings; asked by comparison, so that rounding cannot turn "now" into "never".
  const between = start < limit ? limit < surroundings : limit > surroundings;
  if (!between) return null;
  return Math.max(0, -tau * Math.log((limit - surroundings) / (start - surroundings)));
}

/**
 * How long a unit may stay without power: the figure for its clock. In the lumped case every corner of the bands is tried, since a warm start
 * is worst towards the hot limit and best towards the cold one.
 * @throws Fault `thermal/no-limit` where a lumped unit states neither limit; `thermal/starts-outside` where it may start beyond one
 */
export function unpoweredLimit(unit: UnpoweredUnit): UnpoweredLimit {
  if (unit.kind === 'stated') {
    for (const edge of [unit.limitS.low, unit.limitS.likely, unit.limitS.high]) {
      requireInRange(`${unit.id}: time without power`, edge, { min: 0, max: 30 * 86_400, unit: 's' });
    }
    return {
      basis: 'stated',
      worstS: unit.limitS.low,
      likelyS: unit.limitS.likely,
      bestS: unit.limitS.high,
      meets: null,
    };
  }
  const { id, lowestK, highestK } = unit;
  if (lowestK === null && highestK === null) {
    throw new Fault('thermal/no-limit', `${id} states no temperature that it must not leave`, {
      advice: 'state the lowest or the highest temperature, or the minutes without power',
    });
  }
  if ((lowestK !== null && unit.startK.low < lowestK) || (highestK !== null && unit.startK.high > highestK)) {
    throw new Fault(
      'thermal/starts-outside',
      `${id} may start at ${unit.startK.low} to ${unit.startK.high} K, outside its limits`,
      {
        values: { startLowK: unit.startK.low, startHighK: unit.startK.high, lowestK, highestK },
      },
    );
  }
  const corners = (['low', 'high'] as const).flatMap((start) =>
    (['low', 'high'] as const).flatMap((surroundings) =>
      (['low', 'high'] as const).map((tau) =>
        firstLimit(unit.startK[start], unit.surroundingsK[surroundings], unit.timeConstantS[tau], lowestK, highestK),
      ),
    ),
  );
  const worst = corners.reduce((a, b) => (b.atS < a.atS ? b : a));
  // If any of the surroundings that may occur lies within the limits, the best case is never; else they all lie on one side, and a corner is best.
  const mayStay =
    unit.surroundingsK.high >= (lowestK ?? 0) && unit.surroundingsK.low <= (highestK ?? Number.POSITIVE_INFINITY);
  const best = mayStay ? Number.POSITIVE_INFINITY : Math.max(...corners.map(({ atS }) => atS));
  const likely = firstLimit(
    unit.startK.likely,
    unit.surroundingsK.likely,
    unit.timeConstantS.likely,
    lowestK,
    highestK,
  );
  const finite = (atS: number): number | null => (Number.isFinite(atS) ? atS : null);
  return {
    basis: 'lumped',
    worstS: finite(worst.atS),
    likelyS: finite(likely.atS),
    bestS: finite(best),
    meets: worst.meets,
  };
}

function firstLimit(
  startK: number,
  surroundingsK: number,
  timeConstantS: number,
  lowestK: number | null,
  highestK: number | null,
): { readonly atS: number; readonly meets: 'lowest' | 'highest' | null } {
  const at = (limitK: number | null): number => {
    if (limitK === null) return Number.POSITIVE_INFINITY;
    const leaves = limitK === lowestK ? surroundingsK < limitK : surroundingsK > limitK;
    // Sitting on the limit and drifting inwards is no harm.
    if (!leaves) return Number.POSITIVE_INFINITY;
    return timeToTemperatureS(startK, surroundingsK, timeConstantS, limitK) ?? Number.POSITIVE_INFINITY;
  };
  const low = at(lowestK);
  const high = at(highestK);
  if (!Number.isFinite(low) && !Number.isFinite(high)) return { atS: Number.POSITIVE_INFINITY, meets: null };
  return low <= high ? { atS: low, meets: 'lowest' } : { atS: high, meets: 'highest' };
}
