import geomagnetism from 'geomagnetism';
import type { Geodetic } from './frames.ts';
import { inRange } from './in-range.ts';

/** First and last instant of the field models at hand: WMM2015 to WMM2025. */
export const FIELD_FROM_UTC_MS = Date.UTC(2014, 11, 15, 7);
export const FIELD_TO_UTC_MS = Date.UTC(2029, 10, 13, 3);

/**
 * Strength of the Earth's magnetic field at a place and time, nT.
 * World Magnetic Model to degree 12; within about 150 nT of the true field at the ground. Coefficients are taken once for
 * the instant, so ask for many places at one instant through `fieldModel`.
 * @throws Fault `sky/out-of-range` before 2014-12-15 or after 2029-11-13, and outside −1 to 2000 km of height
 * @source [WMM2025] NOAA/BGS, The US/UK World Magnetic Model for 2025-2030, through geomagnetism 0.2.0
 * @checked tests/reference/sky/field-strength.test.ts against the published test values
 */
export function fieldStrengthNt(place: Geodetic, utcMs: number): number {
  return fieldModel(utcMs)(place);
}

export function fieldModel(utcMs: number): (place: Geodetic) => number {
  if (!(utcMs >= FIELD_FROM_UTC_MS && utcMs <= FIELD_TO_UTC_MS)) {
    inRange('the year of the magnetic field', yearOf(utcMs), yearOf(FIELD_FROM_UTC_MS), yearOf(FIELD_TO_UTC_MS), '');
  }
  const model = geomagnetism.model(new Date(utcMs));
  return (place) => {
    inRange('latitude', place.latitudeRad, -Math.PI / 2, Math.PI / 2, 'rad');
    inRange('longitude', place.longitudeRad, -2 * Math.PI, 2 * Math.PI, 'rad');
    inRange('height', place.heightKm, -1, 2000, 'km');
    return model.point([(place.latitudeRad * 180) / Math.PI, (place.longitudeRad * 180) / Math.PI, place.heightKm]).f;
  };
}

/** Decimal year, to two decimals, for a message. */
function yearOf(utcMs: number): number {
  return Number((1970 + utcMs / (365.2425 * 86_400_000)).toFixed(2));
}
