import type { Vector3 } from '@handrail/quantity/vector';
import {
  ecefKmOf,
  eqjFromTeme,
  geodeticOf,
  positionEcefKm,
  positionTemeKm,
  temeFromEqj,
  temeFromMod,
} from '@handrail/eva/sky/frames';
import { rotate, transpose } from '@handrail/eva/sky/rotation';
import { norm, subtract } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';

/** One position in four frames, km. @source [VALLADO] example 3-15 and its table of vectors; [VALLADO2006] appendix C */
const AT_UTC_MS = Date.UTC(2004, 3, 6, 7, 51, 28) + 386.009;
const DUT1_S = -0.439962;
const TEME: Vector3 = [5094.1801621, 6127.6446595, 6380.3445327];
const MOD: Vector3 = [5094.0283745, 6127.8708164, 6380.2485164];
const J2000: Vector3 = [5102.5096, 6123.01152, 6378.1363];
const PEF: Vector3 = [-1033.4750312, 7901.3055856, 6380.3445327];
const ITRF: Vector3 = [-1033.479383, 7901.2952754, 6380.3565958];

/** 0.1" at the distance of the example, km: the library cuts the nutation series short. */
const TENTH_ARCSECOND_KM = (norm(TEME) * 0.1 * Math.PI) / 648_000;

describe('one vector in every frame [VALLADO] example 3-15', () => {
  it('goes from TEME to J2000 within 0.1"', () => {
    expect(norm(subtract(rotate(eqjFromTeme(AT_UTC_MS), TEME), J2000))).toBeLessThan(TENTH_ARCSECOND_KM);
  });
  it('goes from J2000 to TEME within 0.1"', () => {
    expect(norm(subtract(rotate(temeFromEqj(AT_UTC_MS), J2000), TEME))).toBeLessThan(TENTH_ARCSECOND_KM);
  });
  it('goes from TEME to the mean equator of date within 0.1"', () => {
    expect(norm(subtract(rotate(transpose(temeFromMod(AT_UTC_MS)), TEME), MOD))).toBeLessThan(TENTH_ARCSECOND_KM);
  });
  it('goes from TEME to the turning Earth within 1 m, and within the polar motion of 17 m of the fixed crust', () => {
    const turned = positionEcefKm(TEME, AT_UTC_MS, DUT1_S);
    expect(norm(subtract(turned, PEF))).toBeLessThan(0.001);
    expect(norm(subtract(turned, ITRF))).toBeLessThan(0.017);
    expect(norm(subtract(positionTemeKm(turned, AT_UTC_MS, DUT1_S), TEME))).toBeLessThan(1e-9);
  });
});

describe('latitude, longitude and height', () => {
  it('is found for a place whose coordinates are published [VALLADO] example 3-3', () => {
    // r = 6524.834, 6862.875, 6448.296 km: latitude 34.352496°, longitude 46.4464°, height 5085.22 km
    const place = geodeticOf([6524.834, 6862.875, 6448.296]);
    expect((place.latitudeRad * 180) / Math.PI).toBeCloseTo(34.352496, 5);
    expect((place.longitudeRad * 180) / Math.PI).toBeCloseTo(46.4464, 4);
    expect(place.heightKm).toBeCloseTo(5085.22, 1);
  });
  it('comes back to the same point from the ground to geostationary height, poles included', () => {
    for (const latitude of [-90, -75, -30, 0, 12.5, 44, 89.999, 90]) {
      for (const heightKm of [0, 0.4, 415, 2000, 35_786]) {
        const at = ecefKmOf({ latitudeRad: (latitude * Math.PI) / 180, longitudeRad: 1.1, heightKm });
        expect(norm(subtract(ecefKmOf({ ...geodeticOf(at), longitudeRad: 1.1 }), at))).toBeLessThan(1e-6);
      }
    }
  });
});
