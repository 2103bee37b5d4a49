import { norm, type Vector3 } from '@handrail/quantity/vector';
import { AstroTime, e_tilt, type RotationMatrix, Rotation_EQJ_EQD } from 'astronomy-engine';
import { DAY_MS, EARTH_EQUATORIAL_RADIUS_KM, EARTH_FLATTENING, J2000_UTC_MS } from './earth.ts';
import { inRange, instantInRange } from './in-range.ts';
import { axesAboutX, axesAboutZ, type Matrix3, multiply, rotate, transpose } from './rotation.ts';
import { gmstRad } from './sidereal-time.ts';

/**
 * The frames of this folder, each named where it is used:
 * - TEME: true equator, mean equinox of date, what SGP4 speaks, and the frame in which all windows are computed;
 * - EQJ: mean equator and equinox of J2000 (to 0.02" also GCRF);
 * - MOD: mean equator and equinox of date; TOD: true equator and equinox of date;
 * - ECEF: turns with the Earth (polar motion, up to 15 m, is left out).
 * A Sun of date against an orbit in J2000 shifts an eclipse by some 12 s in the 2020s; hence no vector goes without its frame.
 */
const DEGREE = Math.PI / 180;
const ARCSECOND = DEGREE / 3600;

/** Terrestrial minus universal time comes from the library's own model; an error of 10 s there moves the Sun by 0.4". */
export function astroTime(utcMs: number): AstroTime {
  instantInRange('the instant', utcMs);
  return new AstroTime((utcMs - J2000_UTC_MS) / DAY_MS);
}

function fromLibrary(r: RotationMatrix): Matrix3 {
  // The library stores columns first: rot[i][j] multiplies input component i into output component j.
  const at = (i: number, j: number): number => (r.rot[i] as number[])[j] as number;
  return [at(0, 0), at(1, 0), at(2, 0), at(0, 1), at(1, 1), at(2, 1), at(0, 2), at(1, 2), at(2, 2)];
}

/** Carries TOD components into TEME: a turn about the true pole by the equation of the equinoxes. */
function temeFromTod(time: AstroTime): Matrix3 {
  // `ee` is in seconds of sidereal time, 15" each.
  return axesAboutZ(e_tilt(time).ee * 15 * ARCSECOND);
}

/**
 * Carries EQJ components into TEME.
 * @source [VALLADO] section 3.7 (TEME); precession and nutation of astronomy-engine
 * @checked tests/reference/sky/frames.test.ts, within 0.1" of the published vectors
 */
export function temeFromEqj(utcMs: number): Matrix3 {
  const time = astroTime(utcMs);
  return multiply(temeFromTod(time), fromLibrary(Rotation_EQJ_EQD(time)));
}

export function eqjFromTeme(utcMs: number): Matrix3 {
  return transpose(temeFromEqj(utcMs));
}

/** Carries TEME components into TOD, where apparent right ascensions are printed. */
export function todFromTeme(utcMs: number): Matrix3 {
  return transpose(temeFromTod(astroTime(utcMs)));
}

/** Carries MOD components into TEME: nutation, then the equation of the equinoxes. */
export function temeFromMod(utcMs: number): Matrix3 {
  const time = astroTime(utcMs);
  const tilt = e_tilt(time);
  const nutation = multiply(
    axesAboutX(-tilt.tobl * DEGREE),
    multiply(axesAboutZ(-tilt.dpsi * ARCSECOND), axesAboutX(tilt.mobl * DEGREE)),
  );
  return multiply(temeFromTod(time), nutation);
}

/** Carries TEME components into ECEF (mean sidereal time only). `dut1S`: see `gmstRad`. */
export function ecefFromTeme(utcMs: number, dut1S = 0): Matrix3 {
  return axesAboutZ(gmstRad(utcMs, dut1S));
}

export function positionEcefKm(positionTemeKm: Vector3, utcMs: number, dut1S = 0): Vector3 {
  return rotate(ecefFromTeme(utcMs, dut1S), positionTemeKm);
}

export function positionTemeKm(ecefKm: Vector3, utcMs: number, dut1S = 0): Vector3 {
  return rotate(transpose(ecefFromTeme(utcMs, dut1S)), ecefKm);
}

/** A place over the WGS84 ellipsoid. Latitude is geodetic. */
export interface Geodetic {
  readonly latitudeRad: number;
  /** East positive, −π to π. */
  readonly longitudeRad: number;
  readonly heightKm: number;
}

/** @throws Fault `sky/out-of-range` for a latitude outside ±π/2 or a height outside −1 to 100 000 km */
export function ecefKmOf(place: Geodetic): Vector3 {
  inRange('latitude', place.latitudeRad, -Math.PI / 2, Math.PI / 2, 'rad');
  inRange('longitude', place.longitudeRad, -2 * Math.PI, 2 * Math.PI, 'rad');
  inRange('height', place.heightKm, -1, 100_000, 'km');
  const e2 = EARTH_FLATTENING * (2 - EARTH_FLATTENING);
  const sin = Math.sin(place.latitudeRad);
  const cos = Math.cos(place.latitudeRad);
  const n = EARTH_EQUATORIAL_RADIUS_KM / Math.sqrt(1 - e2 * sin * sin);
  const out = (n + place.heightKm) * cos;
  return [
    out * Math.cos(place.longitudeRad),
    out * Math.sin(place.longitudeRad),
    (n * (1 - e2) + place.heightKm) * sin,
  ];
}

/**
 * Geodetic latitude, longitude and height of an ECEF position, by Bowring's formula with one refinement (better than a
 * millimetre from the ground to geostationary height).
 * @source [BOWRING] B. R. Bowring, Survey Review 23 (1976) 323-327
 * @throws Fault `sky/out-of-range` within 1000 km of the Earth's centre, where latitude has no meaning
 */
export function geodeticOf(ecefKm: Vector3): Geodetic {
  inRange('distance from the centre of the Earth', norm(ecefKm), 1000, 1e6, 'km');
  const [x, y, z] = ecefKm;
  const a = EARTH_EQUATORIAL_RADIUS_KM;
  const b = a * (1 - EARTH_FLATTENING);
  const e2 = EARTH_FLATTENING * (2 - EARTH_FLATTENING);
  const second = (a * a - b * b) / (b * b);
  const p = Math.hypot(x, y);
  let parametric = Math.atan2(z * a, p * b);
  let latitudeRad = 0;
  for (let turn = 0; turn < 2; turn++) {
    latitudeRad = Math.atan2(z + second * b * Math.sin(parametric) ** 3, p - e2 * a * Math.cos(parametric) ** 3);
    parametric = Math.atan2(b * Math.sin(latitudeRad), a * Math.cos(latitudeRad));
  }
  const sin = Math.sin(latitudeRad);
  const n = a / Math.sqrt(1 - e2 * sin * sin);
  // This form stays finite at the poles, where p / cos φ does not.
  const heightKm = p * Math.cos(latitudeRad) + z * sin - (a * a) / n;
  return { latitudeRad, longitudeRad: p === 0 ? 0 : Math.atan2(y, x), heightKm };
}
