import { penumbraDepthRad, umbraDepthRad } from './earth-shadow.ts';
import { betaAngleRad } from './beta-angle.ts';
import { intervalInRange } from './in-range.ts';
import { timingPadS } from './element-age.ts';
import { windowsWherePositive } from './find-windows.ts';
import type { Orbit } from './orbit.ts';
import { type OrbitState, periodMs, propagator } from './propagate.ts';
import { sunTrackTeme } from './sun-position.ts';
import { complement, contains, difference, type Interval, type Intervals, totalS } from './window-set.ts';

/** One night, first contact to last. */
export interface Night {
  /** The Sun begins to be covered (penumbra entry). null: before the interval began. */
  readonly sunsetUtcMs: number | null;
  /** All of it is covered (umbra entry). null: never, or before the interval began. */
  readonly darkFromUtcMs: number | null;
  /** The first of it comes back (umbra exit). null: never, or after the interval ended. */
  readonly darkToUtcMs: number | null;
  /** All of it is clear (penumbra exit). null: after the interval ended. */
  readonly sunriseUtcMs: number | null;
  /** From sunset to sunrise within the interval, s. */
  readonly nightS: number;
  /** Of which in the umbra, s. */
  readonly umbraS: number;
}

export interface DayNight {
  /** Some or all of the Sun is covered. */
  readonly night: Intervals;
  /** All of it is covered. */
  readonly umbra: Intervals;
  /** Some of it is covered. */
  readonly penumbra: Intervals;
  /** None of it is covered. */
  readonly day: Intervals;
  readonly nights: readonly Night[];
  /** Share of the interval in sunlight; the penumbra counts half. */
  readonly litFraction: number;
  readonly periodS: number;
  /** Beta angle at the start and at the end, rad. */
  readonly betaRad: readonly [number, number];
  /** How far every edge may be off because the elements are not of today, s. */
  readonly padS: number;
}

/** Longest interval for a table, d. */
const MAX_DAYS = 31;
const TOLERANCE_MS = 1;

/**
 * Day and night of an orbit over an interval: entries and exits of penumbra and umbra of an oblate Earth, conical shadow,
 * each edge found to 1 ms of the model (so to 0.1 s with all that the model leaves out but air).
 * @param orbit elements with their model
 * @param startUtcMs, endUtcMs the interval, at most 31 d
 * @returns empty `nights` where the orbit stays in sunlight throughout
 * @throws Fault `sky/out-of-range`, `sky/decayed`
 * @source [VALLADO] section 5.3 (shadow); second method: `circularEclipseFraction`
 * @checked tests/reference/sky/eclipse.test.ts
 */
export function dayNight(orbit: Orbit, startUtcMs: number, endUtcMs: number): DayNight {
  intervalInRange(startUtcMs, endUtcMs, MAX_DAYS);
  const state = propagator(orbit);
  const sun = sunTrackTeme(startUtcMs, endUtcMs);
  const search = { startUtcMs, endUtcMs, stepMs: sampleStepMs(orbit), toleranceMs: TOLERANCE_MS };
  const night = windowsWherePositive((t) => penumbraDepthRad(state(t).positionTemeKm, sun(t)), search);
  const umbra = windowsWherePositive((t) => umbraDepthRad(state(t).positionTemeKm, sun(t)), search);
  const penumbra = difference(night, umbra);
  const lengthS = (endUtcMs - startUtcMs) / 1000;
  return {
    night,
    umbra,
    penumbra,
    day: complement(night, startUtcMs, endUtcMs),
    nights: night.map((span) => nightOf(span, umbra, startUtcMs, endUtcMs)),
    litFraction: 1 - (totalS(umbra) + totalS(penumbra) / 2) / lengthS,
    periodS: periodMs(orbit) / 1000,
    betaRad: [betaAngleRad(state(startUtcMs), sun(startUtcMs)), betaAngleRad(state(endUtcMs), sun(endUtcMs))],
    padS: timingPadS(orbit, startUtcMs, endUtcMs),
  };
}

function nightOf(span: Interval, umbra: Intervals, startUtcMs: number, endUtcMs: number): Night {
  const dark = umbra.find(([from, to]) => from < span[1] && to > span[0]);
  const inside = (utcMs: number): number | null => (utcMs <= startUtcMs || utcMs >= endUtcMs ? null : utcMs);
  return {
    sunsetUtcMs: inside(span[0]),
    darkFromUtcMs: dark === undefined ? null : inside(dark[0]),
    darkToUtcMs: dark === undefined ? null : inside(dark[1]),
    sunriseUtcMs: inside(span[1]),
    nightS: (span[1] - span[0]) / 1000,
    umbraS: dark === undefined ? 0 : (dark[1] - dark[0]) / 1000,
  };
}

/** A hundredth of a revolution, finer near the perigee of a long ellipse, where the angles run faster. */
export function sampleStepMs(orbit: Orbit): number {
  return (periodMs(orbit) / 100) * (1 - orbit.eccentricity) ** 1.5;
}

/**
 * Spans of a season in which a whole revolution passes without any of the Sun being covered: near the greatest beta angles.
 * Looked at once a day and narrowed to within a minute; the revolution counted begins at the instant.
 * @param startUtcMs, endUtcMs at most 400 d, within the age that the elements allow
 */
export function seasonsWithoutNight(orbit: Orbit, startUtcMs: number, endUtcMs: number): Intervals {
  intervalInRange(startUtcMs, endUtcMs, 400);
  const state = propagator(orbit);
  const period = periodMs(orbit);
  const sun = sunTrackTeme(startUtcMs, endUtcMs + period);
  const clearance = (from: number): number => clearanceOverRevolution(state, sun, from, period);
  return windowsWherePositive(clearance, {
    startUtcMs,
    endUtcMs: endUtcMs - period,
    stepMs: 86_400_000,
    toleranceMs: 60_000,
  });
}

/** How far the Earth's edge stays from the Sun's at the nearest point of the revolution, rad; negative when it covers some. */
function clearanceOverRevolution(
  state: (t: number) => OrbitState,
  sun: (t: number) => readonly [number, number, number],
  from: number,
  period: number,
): number {
  const samples = 90;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < samples; k++) {
    const t = from + (period * k) / samples;
    least = Math.min(least, -penumbraDepthRad(state(t).positionTemeKm, sun(t)));
  }
  return least;
}

/** True where any of the Sun is covered. */
export function isNight(table: DayNight, utcMs: number): boolean {
  return contains(table.night, utcMs);
}
