import { ANOMALY_LIMIT_NT, fieldPasses } from '@handrail/eva/sky/field-region';
import { fieldStrengthNt } from '@handrail/eva/sky/field-strength';
import { geodeticOf, positionEcefKm } from '@handrail/eva/sky/frames';
import { propagator } from '@handrail/eva/sky/propagate';
import { contains } from '@handrail/eva/sky/window-set';
import { describe, expect, it } from 'vitest';
import { circularOrbit } from './circular-orbit.ts';

const DEGREE = Math.PI / 180;
/** Decimal years of the published table count 365 days a year. */
const instant = (year: number): number => Date.UTC(Math.floor(year), 0, 1) + (year % 1) * 365 * 86_400_000;
const field = (year: number, km: number, latitude: number, longitude: number): number =>
  fieldStrengthNt({ latitudeRad: latitude * DEGREE, longitudeRad: longitude * DEGREE, heightKm: km }, instant(year));

/** Year, height in km, latitude, longitude, strength in nT. @source [WMM2025] published test values, coefficients of 2024-11-13 */
const PUBLISHED = [
  [2025, 28, 89, -121, 56214.42],
  [2025, 39, -59, -8, 28589.82],
  [2025, 18, 0, 21, 32594.76],
  [2025.5, 22, -37, 140, 59492.01],
  [2026, 34, -19, 43, 33076.96],
  [2026.5, 64, 10, 78, 39784.95],
  [2027, 67, -47, -32, 24150.07],
  [2027.5, 0, -13, -59, 23220.41],
  [2028, 30, -36, -64, 22738.55],
  [2028, 11, -22, -21, 25295.36],
  [2028.5, 72, -62, 65, 47576.99],
  [2029.5, 66, -21, 32, 29312.44],
] as const;

describe('the strength of the magnetic field', () => {
  it.each(PUBLISHED)('in %d at %d km, %d°, %d° is %d nT [WMM2025]', (year, km, latitude, longitude, nt) => {
    expect(Math.abs(field(year, km, latitude, longitude) - nt)).toBeLessThan(1);
  });

  it('refuses a date after the models end, with the range', () => {
    expect(() => field(2031, 400, 0, 0)).toThrow(/must lie between 2014\.95 and 2029\.87/);
  });
});

describe('the region of weak field (surface strength under 32,000 nT) [DESANTIS2013]', () => {
  it.each([
    { latitude: -13, longitude: -59, inside: true },
    { latitude: -36, longitude: -64, inside: true },
    { latitude: -22, longitude: -21, inside: true },
    { latitude: -47, longitude: -32, inside: true },
    { latitude: 89, longitude: -121, inside: false },
    { latitude: -37, longitude: 140, inside: false },
    { latitude: 10, longitude: 78, inside: false },
  ])('$latitude°, $longitude° inside: $inside', ({ latitude, longitude, inside }) => {
    expect(field(2027, 0, latitude, longitude) < ANOMALY_LIMIT_NT).toBe(inside);
  });

  it('is passed some times a day from 44°, exactly where the field under the vehicle is weak', () => {
    const start = Date.UTC(2027, 5, 1);
    const orbit = circularOrbit(415, 44, 0, start);
    const region = { thresholdNt: ANOMALY_LIMIT_NT, at: 'ground', beyondModel: 'refuse' } as const;
    const { windows, passes, note } = fieldPasses(orbit, region, start, start + 86_400_000);
    const state = propagator(orbit);
    for (let t = start; t < start + 86_400_000; t += 97_000) {
      const under = geodeticOf(positionEcefKm(state(t).positionTemeKm, t));
      const nt = fieldStrengthNt({ ...under, heightKm: 0 }, start + 43_200_000);
      if (Math.abs(nt - ANOMALY_LIMIT_NT) > 50) expect(contains(windows, t)).toBe(nt < ANOMALY_LIMIT_NT);
    }
    expect(passes.length).toBeGreaterThan(4);
    for (const pass of passes) expect(pass.weakestNt).toBeLessThan(ANOMALY_LIMIT_NT);
    expect(note).toContain('proxy');
  });

  it('past the last date of the models is refused, or held at that date and said so', () => {
    const start = Date.UTC(2031, 8, 14);
    const orbit = circularOrbit(415, 44, 0, start);
    const region = { thresholdNt: ANOMALY_LIMIT_NT, at: 'ground' } as const;
    expect(() => fieldPasses(orbit, { ...region, beyondModel: 'refuse' }, start, start + 86_400_000)).toThrow(
      /2029\.87/,
    );
    const { note, passes } = fieldPasses(orbit, { ...region, beyondModel: 'hold-last' }, start, start + 86_400_000);
    expect(note).toContain('2029-11-13');
    expect(passes.length).toBeGreaterThan(4);
  });
});
