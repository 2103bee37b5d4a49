import { timingPadS } from './element-age.ts';
import { FIELD_TO_UTC_MS, fieldModel } from './field-strength.ts';
import { windowsWherePositive } from './find-windows.ts';
import { geodeticOf, positionEcefKm } from './frames.ts';
import { inRange, intervalInRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { propagator } from './propagate.ts';
import type { Intervals } from './window-set.ts';

/** The published limit of the South Atlantic Anomaly, at the surface. @source [DESANTIS2013]; [AMIT2021] Earth Planets Space 73, eq. 1 */
export const ANOMALY_LIMIT_NT = 32_000;

/** Said wherever passes are shown. */
export const FIELD_PROXY_NOTE =
  'field strength is a proxy: it marks where the inner belt dips low, it measures no dose and knows no solar events';

export interface FieldRegion {
  /** Inside where the field is weaker, nT. */
  readonly thresholdNt: number;
  /**
   * ground: the field at the ellipsoid under the vehicle, as the published limit means it; vehicle: the field at the vehicle's
   * own height, some 20 % weaker at 400 km, for which a threshold must be the user's own.
   */
  readonly at: 'ground' | 'vehicle';
  /** Past the last date of the field models: refuse, or use the field of that date and say so in the note. */
  readonly beyondModel: 'refuse' | 'hold-last';
}

export interface FieldPass {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly weakestNt: number;
  readonly weakestUtcMs: number;
}

export interface FieldPasses {
  readonly windows: Intervals;
  readonly passes: readonly FieldPass[];
  readonly padS: number;
  readonly note: string;
}

const STEP_MS = 20_000;

/**
 * Passes through the region of weak magnetic field: a labelled proxy for the radiation of the South Atlantic Anomaly.
 * The field model is taken for the middle of the interval; it changes by less than 0.3 % a year.
 * @param startUtcMs, endUtcMs at most 31 d, within 2014-12-15 to 2029-11-13
 * @throws Fault `sky/out-of-range`, `sky/decayed`
 * @checked tests/reference/sky/field-strength.test.ts (inside and outside places), tests/properties/sky
 */
export function fieldPasses(orbit: Orbit, region: FieldRegion, startUtcMs: number, endUtcMs: number): FieldPasses {
  intervalInRange(startUtcMs, endUtcMs, 31);
  inRange('the field threshold', region.thresholdNt, 10_000, 70_000, 'nT');
  const state = propagator(orbit);
  const middle = (startUtcMs + endUtcMs) / 2;
  const held = middle > FIELD_TO_UTC_MS && region.beyondModel === 'hold-last';
  const field = fieldModel(held ? FIELD_TO_UTC_MS : middle);
  // The anomaly drifts west by about a third of a degree a year (common practice): 5 s of orbit.
  const years = (middle - FIELD_TO_UTC_MS) / (365.2425 * 86_400_000);
  const note = held
    ? `${FIELD_PROXY_NOTE}; the field is that of 2029-11-13, ${years.toFixed(1)} years before`
    : FIELD_PROXY_NOTE;
  const strength = (utcMs: number): number => {
    const place = geodeticOf(positionEcefKm(state(utcMs).positionTemeKm, utcMs));
    return field(region.at === 'ground' ? { ...place, heightKm: 0 } : place);
  };
  const windows = windowsWherePositive((t) => region.thresholdNt - strength(t), {
    startUtcMs,
    endUtcMs,
    stepMs: STEP_MS,
    toleranceMs: 100,
  });
  return {
    windows,
    passes: windows.map((span) => passOf(span, strength)),
    padS: timingPadS(orbit, startUtcMs, endUtcMs),
    note,
  };
}

function passOf([startUtcMs, endUtcMs]: readonly [number, number], strength: (t: number) => number): FieldPass {
  let weakestNt = Number.POSITIVE_INFINITY;
  let weakestUtcMs = startUtcMs;
  const steps = Math.max(1, Math.ceil((endUtcMs - startUtcMs) / 5000));
  for (let k = 0; k <= steps; k++) {
    const t = startUtcMs + ((endUtcMs - startUtcMs) * k) / steps;
    const nt = strength(t);
    if (nt < weakestNt) [weakestNt, weakestUtcMs] = [nt, t];
  }
  return { startUtcMs, endUtcMs, weakestNt, weakestUtcMs };
}
