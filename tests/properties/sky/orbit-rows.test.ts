import { dayNight } from '@handrail/eva/sky/day-night';
import { orbitRows } from '@handrail/eva/sky/orbit-rows';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularOrbit } from '../../reference/sky/circular-orbit.ts';
import { stationOrbits } from './in-range-orbits.ts';

describe('rows of revolutions', () => {
  it('cover the interval without gap; each begins where a night ended, or after a period without night', () => {
    fc.assert(
      fc.property(stationOrbits, fc.integer({ min: 4_000_000, max: 30_000_000 }), (orbit, length) => {
        const [start, end] = [orbit.epochUtcMs, orbit.epochUtcMs + length];
        const table = dayNight(orbit, start, end);
        const rows = orbitRows(table, start, end);
        let at = start;
        for (const row of rows) {
          expect(row.startUtcMs).toBe(at);
          expect(row.endUtcMs - row.startUtcMs).toBeLessThanOrEqual(1.5 * table.periodS * 1000);
          if (row.startsAtSunrise) expect(table.night.some(([, sunrise]) => sunrise === row.startUtcMs)).toBe(true);
          if (row.sunsetUtcMs !== null) expect(table.night.some(([sunset]) => sunset === row.sunsetUtcMs)).toBe(true);
          at = row.endUtcMs;
        }
        expect(at).toBe(end);
        expect(rows.filter((row) => row.startsAtSunrise)).toHaveLength(
          table.nights.filter((night) => night.sunriseUtcMs !== null).length,
        );
      }),
      { numRuns: 40 },
    );
  });

  it('go on by the period through a season without night', () => {
    const start = Date.UTC(2031, 5, 21);
    // The Sun stands at right ascension 90°, declination 23.4°: a node at 180° and 66.6° of inclination face it squarely.
    const orbit = circularOrbit(600, 66.6, 180, start);
    const table = dayNight(orbit, start, start + 36_000_000);
    expect(table.nights).toEqual([]);
    const rows = orbitRows(table, start, start + 36_000_000);
    expect(rows).toHaveLength(6);
    expect(rows.slice(0, 5).map((row) => (row.endUtcMs - row.startUtcMs) / 1000)).toEqual(
      Array.from({ length: 5 }, () => expect.closeTo(table.periodS, 3)),
    );
  });
});
