import { subtract, type Vector3 } from '@handrail/quantity/vector';
import { type AttitudeLaw, bodyFromTeme } from './attitude.ts';
import { penumbraDepthRad } from './earth-shadow.ts';
import { windowsWherePositive } from './find-windows.ts';
import { inRange, intervalInRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { sampleStepMs } from './day-night.ts';
import { propagator } from './propagate.ts';
import { rotate } from './rotation.ts';
import { sunTrackTeme } from './sun-position.ts';
import { unit } from './vector-algebra.ts';
import { complement, type Intervals } from './window-set.ts';

/** Unit direction of the Sun in body axes as a function of the instant, within [start, end]. */
export function sunInBody(
  orbit: Orbit,
  attitude: AttitudeLaw,
  startUtcMs: number,
  endUtcMs: number,
): (utcMs: number) => Vector3 {
  const state = propagator(orbit);
  const sun = sunTrackTeme(startUtcMs, endUtcMs);
  const toBody = bodyFromTeme(attitude);
  return (utcMs) => {
    const now = state(utcMs);
    return unit(rotate(toBody(now), subtract(sun(utcMs), now.positionTemeKm)));
  };
}

/** The Sun in body axes along one stretch of full daylight, at its two ends and at even steps between. */
export interface DayStretch {
  readonly timesUtcMs: readonly number[];
  readonly sunBody: readonly Vector3[];
}

/** @throws Fault `sky/out-of-range` for a step outside 1 to 60 s or an interval longer than 7 d */
export function dayStretches(
  orbit: Orbit,
  attitude: AttitudeLaw,
  startUtcMs: number,
  endUtcMs: number,
  stepS: number,
): { readonly night: Intervals; readonly stretches: readonly DayStretch[] } {
  intervalInRange(startUtcMs, endUtcMs, 7);
  inRange('the step', stepS, 1, 60, 's');
  const state = propagator(orbit);
  const sun = sunTrackTeme(startUtcMs, endUtcMs);
  const night = windowsWherePositive((t) => penumbraDepthRad(state(t).positionTemeKm, sun(t)), {
    startUtcMs,
    endUtcMs,
    stepMs: sampleStepMs(orbit),
    toleranceMs: 1,
  });
  const directionAt = sunInBody(orbit, attitude, startUtcMs, endUtcMs);
  const stretches = complement(night, startUtcMs, endUtcMs).map(([from, to]): DayStretch => {
    const steps = Math.max(1, Math.ceil((to - from) / (stepS * 1000)));
    const timesUtcMs = Array.from({ length: steps + 1 }, (_, k) => from + ((to - from) * k) / steps);
    return { timesUtcMs, sunBody: timesUtcMs.map((t) => directionAt(t)) };
  });
  return { night, stretches };
}
