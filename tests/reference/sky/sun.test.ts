import type { Vector3 } from '@handrail/quantity/vector';
import { ASTRONOMICAL_UNIT_KM } from '@handrail/eva/sky/earth';
import { astroTime, temeFromMod, todFromTeme } from '@handrail/eva/sky/frames';
import { rotate } from '@handrail/eva/sky/rotation';
import { sunEqjKm, sunModKm, sunTemeKm, sunTrackTeme } from '@handrail/eva/sky/sun-position';
import { angleBetween } from '@handrail/eva/sky/vector-algebra';
import { norm } from '@handrail/quantity/vector';
import { e_tilt } from 'astronomy-engine';
import { sunPos } from 'satellite.js';
import { describe, expect, it } from 'vitest';

const DEGREE = Math.PI / 180;
const direction = (raDeg: number, decDeg: number): Vector3 => [
  Math.cos(decDeg * DEGREE) * Math.cos(raDeg * DEGREE),
  Math.cos(decDeg * DEGREE) * Math.sin(raDeg * DEGREE),
  Math.sin(decDeg * DEGREE),
];
const julianDay = (utcMs: number): number => utcMs / 86_400_000 + 2_440_587.5;
/** The low-precision formula, mean equator of date, km. */
const lowPrecisionMod = (utcMs: number): Vector3 => {
  const { x, y, z } = sunPos(julianDay(utcMs)).rsun;
  return [x * ASTRONOMICAL_UNIT_KM, y * ASTRONOMICAL_UNIT_KM, z * ASTRONOMICAL_UNIT_KM];
};

describe('the place of the Sun against three sources', () => {
  it('is the published low-precision vector within its own accuracy of 0.01° [VALLADO] example 5-1', () => {
    const published: Vector3 = [0.9771945, 0.1924424, 0.0834308];
    const utcMs = Date.UTC(2006, 3, 2);
    expect(angleBetween(sunModKm(utcMs), published) / DEGREE).toBeLessThan(0.01);
    expect(Math.abs(norm(sunModKm(utcMs)) / ASTRONOMICAL_UNIT_KM - norm(published))).toBeLessThan(5e-5);
    // And the second formula of this file is that formula, to the printed digits.
    const low = lowPrecisionMod(utcMs);
    for (const axis of [0, 1, 2] as const)
      expect(Math.abs(low[axis] / ASTRONOMICAL_UNIT_KM - published[axis])).toBeLessThan(2e-6);
  });

  it('is the worked example of 1992 October 13 within 2" [MEEUS] examples 25.a and 25.b', () => {
    // 0h TD is 58.9 s before 0h UT at that time. Right ascensions count from the true equinox.
    const utcMs = Date.UTC(1992, 9, 13) - 58_900;
    const sun = rotate(todFromTeme(utcMs), sunTemeKm(utcMs));
    const obliquity = e_tilt(astroTime(utcMs)).tobl * DEGREE;
    const longitude = Math.atan2(sun[1] * Math.cos(obliquity) + sun[2] * Math.sin(obliquity), sun[0]) / DEGREE;
    // 25.b: apparent longitude 199°54'21.8".
    expect(Math.abs(longitude + 360 - (199 + 54 / 60 + 21.8 / 3600)) * 3600).toBeLessThan(2);
    // 25.a, by the formula of low precision, whose own error there is 11": RA 13h13m31.4s, declination −7°47'06", 0.99766 AU.
    expect(
      (angleBetween(sun, direction(15 * (13 + 13 / 60 + 31.4 / 3600), -(7 + 47 / 60 + 6 / 3600))) / DEGREE) * 3600,
    ).toBeLessThan(13);
    expect(Math.abs(norm(sun) / ASTRONOMICAL_UNIT_KM - 0.99766)).toBeLessThan(6e-5);
  });

  it('is the apparent place of 2019 March 19 within 0.002° [HORIZONS] DE431', () => {
    // Seen from latitude 0, longitude 0 at midnight there: the Sun stands under the observer's feet, so that parallax is nil.
    const utcMs = Date.UTC(2019, 2, 19);
    expect(
      angleBetween(rotate(todFromTeme(utcMs), sunTemeKm(utcMs)), direction(358.2531, -0.75682)) / DEGREE,
    ).toBeLessThan(0.002);
  });
});

describe('the place of the Sun over a full year', () => {
  it('agrees with the low-precision formula within 0.015° on every day of 2031, in one and the same frame', () => {
    let worst = 0;
    for (let day = 0; day < 366; day++) {
      const utcMs = Date.UTC(2031, 0, 1, (day * 5) % 24) + day * 86_400_000;
      worst = Math.max(
        worst,
        angleBetween(sunTemeKm(utcMs), rotate(temeFromMod(utcMs), lowPrecisionMod(utcMs))) / DEGREE,
      );
    }
    expect(worst).toBeLessThan(0.015);
    // The two do differ: this test would notice if one were a copy of the other.
    expect(worst).toBeGreaterThan(0.001);
  });

  it('would be 0.4° off in 2031 if a Sun of J2000 were taken for one of date', () => {
    const utcMs = Date.UTC(2031, 8, 14);
    expect(angleBetween(sunEqjKm(utcMs), sunTemeKm(utcMs)) / DEGREE).toBeGreaterThan(0.35);
  });
});

describe('the interpolated Sun', () => {
  it('stays within 1e-9 rad of the exact one', () => {
    const from = Date.UTC(2031, 8, 14);
    const track = sunTrackTeme(from, from + 3 * 86_400_000);
    for (let k = 0; k <= 300; k++) {
      const t = from + (k / 300) * 3 * 86_400_000;
      expect(angleBetween(track(t), sunTemeKm(t))).toBeLessThan(1e-9);
    }
  });
});
