import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { EARTH_EQUATORIAL_RADIUS_KM, EARTH_FLATTENING, SUN_RADIUS_KM } from './earth.ts';
import { inRange } from './in-range.ts';
import { angleBetween } from './vector-algebra.ts';

/** What casts the shadow and what shines. */
export interface ShadowBodies {
  readonly equatorialRadiusKm: number;
  readonly flattening: number;
  readonly sunRadiusKm: number;
}

export const EARTH_AND_SUN: ShadowBodies = {
  equatorialRadiusKm: EARTH_EQUATORIAL_RADIUS_KM,
  flattening: EARTH_FLATTENING,
  sunRadiusKm: SUN_RADIUS_KM,
};

/** Angles as seen from the vehicle, in the space where the Earth is a sphere. */
interface Discs {
  readonly apartRad: number;
  readonly earthRad: number;
  readonly sunRad: number;
}

/**
 * Stretching the polar axis makes the oblate Earth a sphere and keeps every line of sight a line, so that the shadow cone
 * of a sphere gives the shadow of the ellipsoid. It also stretches the Sun by 0.3 % of its radius: at most 3", or 0.02 s.
 * Air is not counted: it lifts the Sun by refraction and dims it, which softens the edge by some seconds.
 */
function discs(positionTemeKm: Vector3, sunTemeKm: Vector3, bodies: ShadowBodies): Discs {
  const stretch = 1 / (1 - bodies.flattening);
  const r: Vector3 = [positionTemeKm[0], positionTemeKm[1], positionTemeKm[2] * stretch];
  const s: Vector3 = [sunTemeKm[0], sunTemeKm[1], sunTemeKm[2] * stretch];
  const toSun = subtract(s, r);
  const distanceKm = norm(r);
  inRange('distance from the centre of the Earth, in Earth radii', distanceKm / bodies.equatorialRadiusKm, 1, 100, '');
  return {
    apartRad: angleBetween([-r[0], -r[1], -r[2]], toSun),
    earthRad: Math.asin(bodies.equatorialRadiusKm / distanceKm),
    sunRad: Math.asin(bodies.sunRadiusKm / norm(toSun)),
  };
}

/** Positive inside the penumbra or umbra, where some of the Sun is covered; zero at first contact; rad. */
export function penumbraDepthRad(
  positionTemeKm: Vector3,
  sunTemeKm: Vector3,
  bodies: ShadowBodies = EARTH_AND_SUN,
): number {
  const { apartRad, earthRad, sunRad } = discs(positionTemeKm, sunTemeKm, bodies);
  return earthRad + sunRad - apartRad;
}

/** Positive inside the umbra, where all of the Sun is covered; zero when the last of it vanishes; rad. */
export function umbraDepthRad(
  positionTemeKm: Vector3,
  sunTemeKm: Vector3,
  bodies: ShadowBodies = EARTH_AND_SUN,
): number {
  const { apartRad, earthRad, sunRad } = discs(positionTemeKm, sunTemeKm, bodies);
  return earthRad - sunRad - apartRad;
}

/**
 * Share of the Sun's disc that is not covered, 0 to 1, for a disc of even brightness.
 * @source [MONTENBRUCK] O. Montenbruck, E. Gill, Satellite Orbits, section 3.4.2 (overlap of two discs)
 */
export function sunlitFraction(
  positionTemeKm: Vector3,
  sunTemeKm: Vector3,
  bodies: ShadowBodies = EARTH_AND_SUN,
): number {
  const { apartRad: c, earthRad: b, sunRad: a } = discs(positionTemeKm, sunTemeKm, bodies);
  if (c >= a + b) return 1;
  if (c <= b - a) return 0;
  const x = (c * c + a * a - b * b) / (2 * c);
  const y = Math.sqrt(Math.max(0, a * a - x * x));
  const inCircle = (cosine: number): number => Math.acos(Math.max(-1, Math.min(1, cosine)));
  const covered = a * a * inCircle(x / a) + b * b * inCircle((c - x) / b) - c * y;
  return Math.max(0, Math.min(1, 1 - covered / (Math.PI * a * a)));
}

/** Half-angles of the two cones, rad: the umbra narrows behind the Earth, the penumbra widens. */
export function shadowConeHalfAngles(
  sunDistanceKm: number,
  bodies: ShadowBodies = EARTH_AND_SUN,
): { umbraRad: number; penumbraRad: number } {
  inRange('distance of the Sun', sunDistanceKm, 1e8, 2e8, 'km');
  return {
    umbraRad: Math.asin((bodies.sunRadiusKm - bodies.equatorialRadiusKm) / sunDistanceKm),
    penumbraRad: Math.asin((bodies.sunRadiusKm + bodies.equatorialRadiusKm) / sunDistanceKm),
  };
}
