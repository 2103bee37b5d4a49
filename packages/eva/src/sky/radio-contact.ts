import { Fault } from '@handrail/quantity/fault';
import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { type AttitudeLaw, bodyFromTeme } from './attitude.ts';
import { EARTH_EQUATORIAL_RADIUS_KM, EARTH_FLATTENING, GEOSTATIONARY_RADIUS_KM } from './earth.ts';
import { fromCrossings, windowsWherePositive } from './find-windows.ts';
import { ecefKmOf, positionEcefKm, positionTemeKm } from './frames.ts';
import { inRange, intervalInRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { periodMs, propagator } from './propagate.ts';
import { noHint, type RayCaster, rayCaster } from './ray-caster.ts';
import { rotate } from './rotation.ts';
import { sunTrackTeme } from './sun-position.ts';
import { add, angleBetween, dot, scale, unit } from './vector-algebra.ts';
import type { Pose, VehicleShape } from './vehicle-shape.ts';
import { difference, type Interval, type Intervals, windowSet } from './window-set.ts';

/** What the vehicle can talk to. */
export type RadioPartner =
  /** A geostationary relay; its small inclination and drift are not counted. The beam must pass so high over the ellipsoid. */
  | { readonly kind: 'relay'; readonly name: string; readonly longitudeRad: number; readonly grazingHeightKm: number }
  | {
      readonly kind: 'ground';
      readonly name: string;
      readonly latitudeRad: number;
      readonly longitudeRad: number;
      readonly heightM: number;
      readonly maskRad: number;
    };

/** Where the vehicle talks from. Position in body axes with every joint at zero. */
export interface Antenna {
  readonly name: string;
  readonly positionM: Vector3;
  /** The joint that carries it; null: fixed to the vehicle. */
  readonly joint: string | null;
  /** The cone in which it works; null: everywhere that the vehicle does not hide. */
  readonly cone: { readonly boresight: Vector3; readonly halfAngleRad: number } | null;
  /** Surfaces nearer than this do not block, m: its own mast. */
  readonly clearanceM: number;
}

/** The vehicle as an obstacle to its own radio. */
export interface OwnVehicle {
  readonly attitude: AttitudeLaw;
  readonly shape: VehicleShape;
  readonly antennas: readonly Antenna[];
}

/** One unbroken contact. A null end lies outside the interval asked for. */
export interface Contact {
  readonly partner: string;
  readonly aosUtcMs: number | null;
  readonly losUtcMs: number | null;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  /** What ends it: the Earth, a ground mask, or the vehicle itself; null where it runs past the interval. */
  readonly losCause: 'earth' | 'mask' | 'own-vehicle' | null;
}

export interface PartnerContacts {
  readonly partner: string;
  readonly contacts: readonly Contact[];
  /** Where the partner is over the horizon or mask, whatever the vehicle hides. */
  readonly inView: Intervals;
  /** Where it is in view and no antenna sees it past the vehicle. */
  readonly hiddenByVehicle: Intervals;
}

const TOLERANCE_MS = 50;
/** Longest time between two looks past the own vehicle, ms; a shorter break may be missed. */
const OWN_VEHICLE_STEP_MS = 5000;
const MAX_DAYS = 31;

/**
 * When a partner can be heard: acquisition and loss of signal, by the Earth, the mask, and the vehicle's own bodies.
 * The line of sight is straight; light time (0.13 s) and refraction are not counted.
 * @param own null: the vehicle hides nothing, which the caller must say where it claims coverage
 * @throws Fault `sky/out-of-range`, `sky/bad-shape`, `sky/decayed`
 * @checked tests/reference/sky/radio.test.ts
 */
export function radioContacts(
  orbit: Orbit,
  partner: RadioPartner,
  own: OwnVehicle | null,
  startUtcMs: number,
  endUtcMs: number,
): PartnerContacts {
  intervalInRange(startUtcMs, endUtcMs, MAX_DAYS);
  const state = propagator(orbit);
  const height = heightOver(partner);
  const search = { startUtcMs, endUtcMs, stepMs: Math.min(60_000, periodMs(orbit) / 90), toleranceMs: TOLERANCE_MS };
  const inView = windowsWherePositive((t) => height(state(t).positionTemeKm, t), search);
  const hidden = own === null ? [] : hiddenByVehicle(orbit, partner, own, inView, startUtcMs, endUtcMs);
  const heard = difference(inView, hidden);
  const cause = partner.kind === 'ground' ? 'mask' : 'earth';
  return {
    partner: partner.name,
    inView,
    hiddenByVehicle: hidden,
    contacts: heard.map(([start, end]) => ({
      partner: partner.name,
      startUtcMs: start,
      endUtcMs: end,
      aosUtcMs: start <= startUtcMs ? null : start,
      losUtcMs: end >= endUtcMs ? null : end,
      losCause: end >= endUtcMs ? null : inView.some((view) => view[1] === end) ? cause : 'own-vehicle',
    })),
  };
}

/** Place of the partner in ECEF, km. @throws Fault `sky/out-of-range` */
export function partnerEcefKm(partner: RadioPartner): Vector3 {
  inRange(`the longitude of ${partner.name}`, partner.longitudeRad, -2 * Math.PI, 2 * Math.PI, 'rad');
  if (partner.kind === 'relay') {
    return [
      GEOSTATIONARY_RADIUS_KM * Math.cos(partner.longitudeRad),
      GEOSTATIONARY_RADIUS_KM * Math.sin(partner.longitudeRad),
      0,
    ];
  }
  inRange(`the height of ${partner.name}`, partner.heightM, -500, 9000, 'm');
  return ecefKmOf({
    latitudeRad: partner.latitudeRad,
    longitudeRad: partner.longitudeRad,
    heightKm: partner.heightM / 1000,
  });
}

/** Positive where the line of sight is free of the Earth or over the mask; a smooth function of position. */
function heightOver(partner: RadioPartner): (positionTemeKm: Vector3, utcMs: number) => number {
  const placeEcef = partnerEcefKm(partner);
  if (partner.kind === 'ground') {
    inRange(`the mask of ${partner.name}`, partner.maskRad, -0.1, Math.PI / 2, 'rad');
    const [lat, lon] = [partner.latitudeRad, partner.longitudeRad];
    const up: Vector3 = [Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)];
    return (position, utcMs) =>
      Math.PI / 2 - angleBetween(up, subtract(positionEcefKm(position, utcMs), placeEcef)) - partner.maskRad;
  }
  const graze = inRange(`the grazing height of ${partner.name}`, partner.grazingHeightKm, 0, 300, 'km');
  const radius = EARTH_EQUATORIAL_RADIUS_KM + graze;
  // Grown by the same height all over; its flattening keeps the polar radius right to 0.02 km.
  const stretch = radius / (EARTH_EQUATORIAL_RADIUS_KM * (1 - EARTH_FLATTENING) + graze);
  const to: Vector3 = [placeEcef[0], placeEcef[1], placeEcef[2] * stretch];
  return (position, utcMs) => {
    const p = positionEcefKm(position, utcMs);
    const from: Vector3 = [p[0], p[1], p[2] * stretch];
    const ray = subtract(to, from);
    // Nearest point of the line to the centre, held at the vehicle when the partner is on its upper side.
    const along = Math.max(0, Math.min(1, -dot(from, ray) / dot(ray, ray)));
    return norm(add(from, scale(ray, along))) - radius;
  };
}

function hiddenByVehicle(
  orbit: Orbit,
  partner: RadioPartner,
  own: OwnVehicle,
  inView: Intervals,
  startUtcMs: number,
  endUtcMs: number,
): Intervals {
  if (own.antennas.length === 0) return inView;
  const caster = rayCaster(own.shape);
  const antennas = own.antennas.map((antenna) => preparedAntenna(antenna, caster));
  const state = propagator(orbit);
  const toBody = bodyFromTeme(own.attitude);
  const sun = sunTrackTeme(startUtcMs, endUtcMs);
  const place = partnerEcefKm(partner);
  const heard = (utcMs: number): boolean => {
    const now = state(utcMs);
    const m = toBody(now);
    const direction = unit(rotate(m, subtract(positionTemeKm(place, utcMs), now.positionTemeKm)));
    const poses = caster.posesAt(unit(rotate(m, subtract(sun(utcMs), now.positionTemeKm))));
    return antennas.some((antenna) => antenna(direction, poses));
  };
  const hidden: Interval[] = [];
  for (const [from, to] of inView) {
    const steps = Math.max(1, Math.ceil((to - from) / OWN_VEHICLE_STEP_MS));
    const crossings: number[] = [];
    let last = heard(from);
    const startsHidden = !last;
    for (let k = 1; k <= steps; k++) {
      const t = from + ((to - from) * k) / steps;
      const now = heard(t);
      if (now !== last) {
        let [low, high] = [from + ((to - from) * (k - 1)) / steps, t];
        while (high - low > TOLERANCE_MS) {
          const middle = (low + high) / 2;
          if (heard(middle) === last) low = middle;
          else high = middle;
        }
        crossings.push((low + high) / 2);
        last = now;
      }
    }
    hidden.push(...fromCrossings(startsHidden, crossings, from, to));
  }
  return windowSet(hidden);
}

/** Whether an antenna sees past the vehicle along a direction. */
function preparedAntenna(antenna: Antenna, caster: RayCaster): (direction: Vector3, poses: readonly Pose[]) => boolean {
  const carrier = caster.carriers.indexOf(antenna.joint);
  if (carrier < 0) {
    throw new Fault('sky/bad-shape', `antenna ${antenna.name} hangs on "${antenna.joint}", which is not a joint`, {
      values: { antenna: antenna.name },
    });
  }
  inRange(`the clearance of antenna ${antenna.name}`, antenna.clearanceM, 0, 100, 'm');
  const { cone } = antenna;
  if (cone !== null) {
    inRange(`the half-angle of antenna ${antenna.name}`, cone.halfAngleRad, 0, Math.PI, 'rad');
    if (!(norm(cone.boresight) > 1e-9))
      throw new Fault('sky/bad-shape', `the boresight of antenna ${antenna.name} has no length`, {
        values: { antenna: antenna.name },
      });
  }
  const hint = noHint();
  return (direction, poses) => {
    const pose = poses[carrier] as Pose;
    if (cone !== null && angleBetween(rotate(pose.turn, cone.boresight), direction) > cone.halfAngleRad) return false;
    const from = add(rotate(pose.turn, antenna.positionM), pose.shiftM);
    return caster.blockedBy(from, direction, poses, antenna.clearanceM, hint) < 0;
  };
}
