import type { Vector3 } from '@handrail/quantity/vector';
import { angleBetween, cross } from './vector-algebra.ts';
import { EARTH_EQUATORIAL_RADIUS_KM } from './earth.ts';
import { inRange } from './in-range.ts';
import type { OrbitState } from './propagate.ts';

/**
 * Angle between the orbit plane and the Sun, rad, −π/2 to π/2; positive when the Sun stands on the side of the orbit normal.
 * @checked tests/reference/sky/beta.test.ts
 */
export function betaAngleRad(state: OrbitState, sunTemeKm: Vector3): number {
  return Math.PI / 2 - angleBetween(cross(state.positionTemeKm, state.velocityTemeKmS), sunTemeKm);
}

/**
 * The same from the elements of the plane and the place of the Sun, all in one equatorial frame, rad.
 * @source [SMAD] Space Mission Analysis and Design; [VALLADO]: sin β = cos δ sin i sin(Ω − α) + sin δ cos i
 */
export function betaAngleOfPlaneRad(
  inclinationRad: number,
  raanRad: number,
  sunRightAscensionRad: number,
  sunDeclinationRad: number,
): number {
  inRange('inclination', inclinationRad, 0, Math.PI, 'rad');
  inRange('declination of the Sun', sunDeclinationRad, -Math.PI / 2, Math.PI / 2, 'rad');
  inRange('node minus right ascension of the Sun', raanRad - sunRightAscensionRad, -4 * Math.PI, 4 * Math.PI, 'rad');
  const sine =
    Math.cos(sunDeclinationRad) * Math.sin(inclinationRad) * Math.sin(raanRad - sunRightAscensionRad) +
    Math.sin(sunDeclinationRad) * Math.cos(inclinationRad);
  return Math.asin(Math.max(-1, Math.min(1, sine)));
}

/**
 * Share of a circular orbit that lies in the Earth's shadow taken as a cylinder; 0 where the orbit stays clear of it.
 * A closed form: the second method beside the search for roots in `day-night.ts`.
 * @source [GILMORE] D. G. Gilmore (ed.), Spacecraft Thermal Control Handbook, vol. 1, chapter 2 (MEMORY)
 */
export function circularEclipseFraction(
  heightKm: number,
  betaRad: number,
  earthRadiusKm = EARTH_EQUATORIAL_RADIUS_KM,
): number {
  inRange('height', heightKm, 100, 50_000, 'km');
  inRange('beta angle', betaRad, -Math.PI / 2, Math.PI / 2, 'rad');
  const ratio =
    Math.sqrt(heightKm * heightKm + 2 * earthRadiusKm * heightKm) / ((earthRadiusKm + heightKm) * Math.cos(betaRad));
  return ratio >= 1 ? 0 : Math.acos(ratio) / Math.PI;
}
