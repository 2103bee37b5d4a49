import type { DayNight } from './day-night.ts';

/** One revolution as a row that begins with sunrise. */
export interface OrbitRow {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  /** Where day ends in this row; null where it does not. */
  readonly sunsetUtcMs: number | null;
  /** False where the row begins with the interval, or after a revolution without night, and not with a sunrise. */
  readonly startsAtSunrise: boolean;
}

/**
 * The interval of a table cut into revolutions at each sunrise. The first and the last row are as long as the interval
 * leaves them; where no night comes, a row ends after one period.
 * @checked tests/properties/sky/orbit-rows.test.ts
 */
export function orbitRows(table: DayNight, startUtcMs: number, endUtcMs: number): readonly OrbitRow[] {
  const periodMs = table.periodS * 1000;
  const sunrises = table.nights.flatMap((night) => (night.sunriseUtcMs === null ? [] : [night.sunriseUtcMs]));
  const cuts: { readonly utcMs: number; readonly sunrise: boolean }[] = [{ utcMs: startUtcMs, sunrise: false }];
  let from = startUtcMs;
  for (const to of [...sunrises, endUtcMs]) {
    // A sunrise moves by seconds from one revolution to the next; half a period more means that one did not come.
    const missing = Math.max(0, Math.ceil((to - from) / periodMs - 1.5));
    for (let k = 1; k <= missing; k++) cuts.push({ utcMs: from + k * periodMs, sunrise: false });
    if (to > from) cuts.push({ utcMs: to, sunrise: to !== endUtcMs });
    from = to;
  }
  return cuts.slice(1).map((cut, k): OrbitRow => {
    const start = cuts[k] as (typeof cuts)[number];
    const night = table.nights.find(
      ({ sunsetUtcMs }) => sunsetUtcMs !== null && sunsetUtcMs >= start.utcMs && sunsetUtcMs < cut.utcMs,
    );
    return {
      startUtcMs: start.utcMs,
      endUtcMs: cut.utcMs,
      sunsetUtcMs: night?.sunsetUtcMs ?? null,
      startsAtSunrise: start.sunrise,
    };
  });
}
