import { Fault } from '@handrail/quantity/fault';
import { byCase, type SupplyCase } from './supply-case.ts';

export type SupplyName = 'oxygen' | 'carbon-dioxide' | 'water' | 'battery';
export const SUPPLY_NAMES: readonly SupplyName[] = ['oxygen', 'carbon-dioxide', 'water', 'battery'];

export interface SupplyPoint {
  readonly atS: number;
  readonly left: number;
}

/** What is left over time in one case. Straight between points, never rising. `left` of the absorber is capacity not yet taken up. */
export interface SupplyTrace {
  readonly start: number;
  /** The amount that may not be used. */
  readonly reserve: number;
  readonly points: readonly SupplyPoint[];
}

export interface SupplyCurve {
  readonly supply: SupplyName;
  readonly unit: 'kg' | 'J';
  readonly traces: Readonly<Record<SupplyCase, SupplyTrace>>;
}

/**
 * Amount left at an instant, kg or J; may be negative, which says how much was lacking.
 * @throws Fault `suit/outside-curve` before the first or after the last point
 */
export function amountLeft(curve: SupplyCurve, supplyCase: SupplyCase, atS: number): number {
  const { points } = curve.traces[supplyCase];
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined || !(atS >= first.atS && atS <= last.atS)) {
    throw new Fault(
      'suit/outside-curve',
      `${curve.supply} is known from ${first?.atS} to ${last?.atS} s, not at ${atS} s`,
      {
        values: { supply: curve.supply, fromS: first?.atS, toS: last?.atS, atS },
      },
    );
  }
  for (let i = 1; i < points.length; i++) {
    const to = points[i] as SupplyPoint;
    const from = points[i - 1] as SupplyPoint;
    // Two points at one instant are a step (a purge): the value after it counts.
    if (atS < to.atS) return from.left + ((atS - from.atS) / (to.atS - from.atS)) * (to.left - from.left);
  }
  return last.left;
}

/** PET in seconds at which the supply comes down to its reserve; null: not within the curve. */
export function petOfLimit(curve: SupplyCurve, supplyCase: SupplyCase): number | null {
  return petOfLevel(curve, supplyCase, curve.traces[supplyCase].reserve);
}

/** PET in seconds at which the amount left first comes down to `level`; null: not within the curve. */
export function petOfLevel(curve: SupplyCurve, supplyCase: SupplyCase, level: number): number | null {
  const { points } = curve.traces[supplyCase];
  for (let i = 0; i < points.length; i++) {
    const to = points[i] as SupplyPoint;
    if (to.left > level) continue;
    const from = points[i - 1];
    if (from === undefined || from.left <= level) return to.atS;
    return from.atS + ((from.left - level) / (from.left - to.left)) * (to.atS - from.atS);
  }
  return null;
}

export interface LimitingSupply {
  readonly supply: SupplyName;
  readonly petS: number;
}

/** The supply whose reserve is reached first in a case; null: none within the curves. Ties go to the order of `SUPPLY_NAMES`. */
export function limitingSupply(curves: readonly SupplyCurve[], supplyCase: SupplyCase): LimitingSupply | null {
  let first: LimitingSupply | null = null;
  for (const curve of curves) {
    const petS = petOfLimit(curve, supplyCase);
    if (petS !== null && (first === null || petS < first.petS)) first = { supply: curve.supply, petS };
  }
  return first;
}

export interface SupplyReading {
  readonly supply: SupplyName;
  readonly atS: number;
  /** In the curve's unit; oxygen pressures go through `oxygenMassKg` first. */
  readonly left: number;
}

/**
 * The curve from a reading on: it passes through what was read, and then falls as planned (`as-planned`) or as much faster or
 * slower as it has so far (`as-used`: planned use times used-so-far over planned-so-far). Points before the reading are dropped.
 * @throws Fault `suit/outside-curve`; `suit/reading-above-start` where more is read than there was
 */
export function curveFromReading(
  curve: SupplyCurve,
  reading: SupplyReading,
  then: 'as-planned' | 'as-used',
): SupplyCurve {
  const from = (supplyCase: SupplyCase): SupplyTrace => {
    const trace = curve.traces[supplyCase];
    if (!Number.isFinite(reading.left) || reading.left > curve.traces.best.start) {
      throw new Fault(
        'suit/reading-above-start',
        `${curve.supply}: ${reading.left} ${curve.unit} read, but it started with at most ${curve.traces.best.start} ${curve.unit}`,
        { values: { supply: curve.supply, left: reading.left, start: curve.traces.best.start } },
      );
    }
    const planned = amountLeft(curve, supplyCase, reading.atS);
    const plannedUse = trace.start - planned;
    const used = Math.max(0, trace.start - reading.left);
    const factor = then === 'as-used' && plannedUse > 0 ? used / plannedUse : 1;
    return {
      start: trace.start,
      reserve: trace.reserve,
      points: [
        { atS: reading.atS, left: reading.left },
        ...trace.points
          .filter(({ atS }) => atS > reading.atS)
          .map(({ atS, left }) => ({ atS, left: reading.left - (planned - left) * factor })),
      ],
    };
  };
  return {
    supply: curve.supply,
    unit: curve.unit,
    traces: byCase(from),
  };
}
