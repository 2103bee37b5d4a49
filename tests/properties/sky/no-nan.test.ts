import { betaAngleOfPlaneRad, betaAngleRad, circularEclipseFraction } from '@handrail/eva/sky/beta-angle';
import { dayNight } from '@handrail/eva/sky/day-night';
import { penumbraDepthRad, sunlitFraction, umbraDepthRad } from '@handrail/eva/sky/earth-shadow';
import { elementAge } from '@handrail/eva/sky/element-age';
import { fieldStrengthNt } from '@handrail/eva/sky/field-strength';
import { ecefKmOf, geodeticOf, positionEcefKm } from '@handrail/eva/sky/frames';
import { propagate } from '@handrail/eva/sky/propagate';
import { bodyFromTeme } from '@handrail/eva/sky/attitude';
import { interpolated, multiply, quaternionOfYawPitchRoll, transpose } from '@handrail/eva/sky/rotation';
import { sunTemeKm } from '@handrail/eva/sky/sun-position';
import { totalS } from '@handrail/eva/sky/window-set';
import { norm } from '@handrail/quantity/vector';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochs, evenly, orbits, stationOrbits } from './in-range-orbits.ts';

const DAY = 86_400_000;
const angle = evenly(-3.2, 3.2);

describe('no input in range gives NaN', () => {
  it('for any orbit and any instant within 30 d of its epoch', () => {
    fc.assert(
      fc.property(orbits, fc.integer({ min: -30 * DAY, max: 30 * DAY }), (orbit, after) => {
        const utcMs = orbit.epochUtcMs + after;
        const [state] = propagate(orbit, [utcMs]);
        const now = state as NonNullable<typeof state>;
        const r = norm(now.positionTemeKm);
        expect(r).toBeGreaterThan(orbit.semiMajorAxisKm * (1 - orbit.eccentricity) - 1e-6);
        expect(r).toBeLessThan(orbit.semiMajorAxisKm * (1 + orbit.eccentricity) + 1e-6);
        expect(norm(now.velocityTemeKmS)).toBeLessThan(12);
        const sun = sunTemeKm(utcMs);
        expect(norm(sun)).toBeGreaterThan(1.46e8);
        expect(norm(sun)).toBeLessThan(1.53e8);
        const lit = sunlitFraction(now.positionTemeKm, sun);
        expect(lit).toBeGreaterThanOrEqual(0);
        expect(lit).toBeLessThanOrEqual(1);
        // The three agree: all covered in the umbra, none outside the penumbra.
        if (umbraDepthRad(now.positionTemeKm, sun) > 1e-9) expect(lit).toBe(0);
        if (penumbraDepthRad(now.positionTemeKm, sun) < -1e-9) expect(lit).toBe(1);
        expect(Math.abs(betaAngleRad(now, sun))).toBeLessThanOrEqual(Math.PI / 2);
        const place = geodeticOf(positionEcefKm(now.positionTemeKm, utcMs));
        expect(Math.abs(place.latitudeRad)).toBeLessThanOrEqual(Math.PI / 2);
        expect(place.heightKm).toBeGreaterThan(90);
        const age = elementAge(orbit, utcMs);
        expect(age.timingErrorS).toBeGreaterThan(0);
        expect(Number.isFinite(age.alongTrackErrorKm)).toBe(true);
        const m = bodyFromTeme({ kind: 'local-vertical', lvlhFromBody: [1, 0, 0, 0] })(now);
        for (const [k, cell] of multiply(m, transpose(m)).entries()) expect(cell).toBeCloseTo(k % 4 === 0 ? 1 : 0, 12);
      }),
      { numRuns: 400 },
    );
  });

  it('for closed forms, places and fields', () => {
    fc.assert(
      fc.property(evenly(100, 50_000), evenly(-Math.PI / 2, Math.PI / 2), angle, angle, (km, right, a, b) => {
        const share = circularEclipseFraction(km, right);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThan(0.5);
        expect(Math.abs(betaAngleOfPlaneRad(Math.abs(a) % Math.PI, b, a, right))).toBeLessThanOrEqual(Math.PI / 2);
        const back = geodeticOf(ecefKmOf({ latitudeRad: right, longitudeRad: b, heightKm: km }));
        expect(back.heightKm).toBeCloseTo(km, 5);
        const nt = fieldStrengthNt(
          { latitudeRad: right, longitudeRad: b, heightKm: km % 2000 },
          Date.UTC(2026, 0, 1) + a * 3e10,
        );
        expect(nt).toBeGreaterThan(5000);
        expect(nt).toBeLessThan(70_000);
      }),
      { numRuns: 300 },
    );
  });

  it('for rotations: a mixture of two attitudes is a rotation between them', () => {
    fc.assert(
      fc.property(angle, angle, angle, angle, evenly(0, 1), (yaw, pitch, roll, other, fraction) => {
        const q = interpolated(
          quaternionOfYawPitchRoll(yaw, pitch, roll),
          quaternionOfYawPitchRoll(other, roll, pitch),
          fraction,
        );
        expect(Math.hypot(...q)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('a table of day and night', () => {
  it('splits any interval of a station orbit into day and night without gap or overlap, in order', () => {
    fc.assert(
      fc.property(stationOrbits, fc.integer({ min: 600_000, max: DAY / 4 }), (orbit, length) => {
        const [start, end] = [orbit.epochUtcMs, orbit.epochUtcMs + length];
        const table = dayNight(orbit, start, end);
        expect(totalS(table.day) + totalS(table.night)).toBeCloseTo(length / 1000, 3);
        expect(totalS(table.umbra) + totalS(table.penumbra)).toBeCloseTo(totalS(table.night), 3);
        // The least share of sunlight in any low orbit is 59 % of a revolution; over part of one it may be none.
        expect(table.litFraction).toBeGreaterThanOrEqual(0);
        expect(table.litFraction).toBeLessThanOrEqual(1);
        let at = start;
        for (const night of table.nights) {
          for (const instant of [night.sunsetUtcMs, night.darkFromUtcMs, night.darkToUtcMs, night.sunriseUtcMs]) {
            if (instant === null) continue;
            expect(instant).toBeGreaterThanOrEqual(at);
            at = instant;
          }
          expect(night.umbraS).toBeLessThanOrEqual(night.nightS);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('does not depend on where the interval is cut', () => {
    fc.assert(
      fc.property(stationOrbits, fc.integer({ min: 1_000_000, max: 9_000_000 }), (orbit, cut) => {
        const start = orbit.epochUtcMs;
        const whole = dayNight(orbit, start, start + 10_000_000);
        const [a, b] = [dayNight(orbit, start, start + cut), dayNight(orbit, start + cut, start + 10_000_000)];
        expect(Math.abs(totalS(whole.night) - totalS(a.night) - totalS(b.night))).toBeLessThan(0.05);
      }),
      { numRuns: 25 },
    );
  });
});

describe('the pad of windows', () => {
  it('only grows as the elements age, either way', () => {
    fc.assert(
      fc.property(orbits, fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), (orbit, a, b) => {
        const pad = (days: number): number => elementAge(orbit, orbit.epochUtcMs + days * DAY).timingErrorS;
        expect(pad(a + b)).toBeGreaterThanOrEqual(pad(a));
        expect(pad(-a - b)).toBeGreaterThanOrEqual(pad(-a));
      }),
    );
  });

  it('is finite for any epoch', () => {
    fc.assert(
      fc.property(epochs, orbits, (utcMs, orbit) =>
        Number.isFinite(elementAge({ ...orbit, epochUtcMs: utcMs }, utcMs).timingErrorS),
      ),
    );
  });
});
