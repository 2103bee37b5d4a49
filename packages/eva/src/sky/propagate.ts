import { Fault } from '@handrail/quantity/fault';
import type { Vector3 } from '@handrail/quantity/vector';
import { json2satrec, type SatRec, sgp4, twoline2satrec } from 'satellite.js';
import { DAY_MS, EARTH_EQUATORIAL_RADIUS_KM, EARTH_J2, EARTH_MU_KM3_S2 } from './earth.ts';
import { temeFromEqj } from './frames.ts';
import { inRange, instantInRange } from './in-range.ts';
import { checkedKeplerOrbit, checkedSgp4Orbit, type KeplerOrbit, type Orbit, type Sgp4Orbit } from './orbit.ts';
import { rotate } from './rotation.ts';
import { add, cross, scale } from './vector-algebra.ts';

export interface OrbitState {
  readonly utcMs: number;
  readonly positionTemeKm: Vector3;
  readonly velocityTemeKmS: Vector3;
}

/** Elements older or younger than this say nothing any more, and are refused. */
export const MAX_ELEMENT_AGE_DAYS = 400;

/**
 * Position and velocity at each instant.
 * @param orbit elements; the model is part of them
 * @param instantsUtcMs UTC ms, within 400 days of the epoch
 * @throws Fault `sky/out-of-range`; `sky/decayed` where the elements fall out of the sky
 * @source [VALLADO2006] AIAA 2006-6753 (SGP4, through satellite.js); [VALLADO] algorithm 65 (J2 secular)
 * @checked tests/reference/sky/sgp4.test.ts, tests/reference/sky/kepler-j2.test.ts
 */
export function propagate(orbit: Orbit, instantsUtcMs: readonly number[]): readonly OrbitState[] {
  const at = propagator(orbit);
  return instantsUtcMs.map((utcMs) => at(utcMs));
}

/** The same as a function of the instant, for engines that choose their instants as they go. */
export function propagator(orbit: Orbit): (utcMs: number) => OrbitState {
  const at =
    orbit.kind === 'sgp4' ? sgp4Propagator(checkedSgp4Orbit(orbit)) : keplerPropagator(checkedKeplerOrbit(orbit));
  return (utcMs) => {
    instantInRange('the instant', utcMs);
    inRange(
      'the age of the elements',
      (utcMs - orbit.epochUtcMs) / DAY_MS,
      -MAX_ELEMENT_AGE_DAYS,
      MAX_ELEMENT_AGE_DAYS,
      'd',
    );
    return at(utcMs);
  };
}

const SGP4_ERRORS: Readonly<Record<number, string>> = {
  1: 'the mean eccentricity leaves 0 to 1',
  2: 'the mean motion falls below zero',
  3: 'the disturbed eccentricity leaves 0 to 1',
  4: 'the orbit shrinks to nothing',
  6: 'the position lies under ground: the object has decayed',
};

function sgp4Propagator(orbit: Sgp4Orbit): (utcMs: number) => OrbitState {
  const record: SatRec =
    orbit.lines === null
      ? json2satrec({
          OBJECT_NAME: orbit.name,
          OBJECT_ID: '',
          EPOCH: new Date(orbit.epochUtcMs).toISOString(),
          MEAN_MOTION: orbit.meanMotionRevPerDay,
          ECCENTRICITY: orbit.eccentricity,
          INCLINATION: orbit.inclinationDeg,
          RA_OF_ASC_NODE: orbit.raanDeg,
          ARG_OF_PERICENTER: orbit.argPerigeeDeg,
          MEAN_ANOMALY: orbit.meanAnomalyDeg,
          NORAD_CAT_ID: orbit.catalogueNumber,
          BSTAR: orbit.bstarPerEarthRadius,
          // Read by the record and used by nothing in SGP4.
          MEAN_MOTION_DOT: orbit.halfMeanMotionRateRevPerDay2 ?? 0,
          MEAN_MOTION_DDOT: 0,
          EPHEMERIS_TYPE: 0,
          CLASSIFICATION_TYPE: 'U',
          ELEMENT_SET_NO: 0,
          REV_AT_EPOCH: 0,
        })
      : twoline2satrec(orbit.lines[0], orbit.lines[1]);
  return (utcMs) => {
    // Minutes from our own epoch, which keeps the microseconds that a Date would drop.
    const state = sgp4(record, (utcMs - orbit.epochUtcMs) / 60_000);
    if (state === null || !Number.isFinite(state.position.x + state.velocity.x)) {
      const days = (utcMs - orbit.epochUtcMs) / DAY_MS;
      throw new Fault(
        'sky/decayed',
        `${orbit.name}: ${days.toFixed(2)} d after the epoch of the elements SGP4 has no answer: ${SGP4_ERRORS[record.error] ?? 'unknown reason'}`,
        { values: { name: orbit.name, ageDays: days, sgp4Error: record.error }, advice: 'use younger elements' },
      );
    }
    const { position: p, velocity: v } = state;
    return { utcMs, positionTemeKm: [p.x, p.y, p.z], velocityTemeKmS: [v.x, v.y, v.z] };
  };
}

/** Secular rates by the Earth's flattening, rad/s; all zero but the mean motion for a two-body orbit. */
export interface SecularRates {
  readonly raanRadS: number;
  readonly argPerigeeRadS: number;
  readonly meanAnomalyRadS: number;
}

/** @source [VALLADO] eq. 9-37, 9-39, 9-41 */
export function j2Rates(semiMajorAxisKm: number, eccentricity: number, inclinationRad: number): SecularRates {
  const n = Math.sqrt(EARTH_MU_KM3_S2 / semiMajorAxisKm ** 3);
  const root = Math.sqrt(1 - eccentricity * eccentricity);
  const p = semiMajorAxisKm * root * root;
  const k = 0.75 * n * EARTH_J2 * (EARTH_EQUATORIAL_RADIUS_KM / p) ** 2;
  const sin2 = Math.sin(inclinationRad) ** 2;
  return {
    raanRadS: -2 * k * Math.cos(inclinationRad),
    argPerigeeRadS: k * (4 - 5 * sin2),
    meanAnomalyRadS: n + k * root * (2 - 3 * sin2),
  };
}

function keplerPropagator(orbit: KeplerOrbit): (utcMs: number) => OrbitState {
  const { semiMajorAxisKm: a, eccentricity: e, inclinationRad: i } = orbit;
  const n = Math.sqrt(EARTH_MU_KM3_S2 / a ** 3);
  const rates = orbit.kind === 'kepler-j2' ? j2Rates(a, e, i) : { raanRadS: 0, argPerigeeRadS: 0, meanAnomalyRadS: n };
  const root = Math.sqrt(1 - e * e);
  return (utcMs) => {
    const dt = (utcMs - orbit.epochUtcMs) / 1000;
    const raan = orbit.raanRad + rates.raanRadS * dt;
    const arg = orbit.argPerigeeRad + rates.argPerigeeRadS * dt;
    const E = eccentricAnomaly(orbit.meanAnomalyRad + rates.meanAnomalyRadS * dt, e);
    const [co, so, ca, sa, ci, si] = [
      Math.cos(raan),
      Math.sin(raan),
      Math.cos(arg),
      Math.sin(arg),
      Math.cos(i),
      Math.sin(i),
    ];
    const toPerigee: Vector3 = [co * ca - so * sa * ci, so * ca + co * sa * ci, sa * si];
    const along: Vector3 = [-co * sa - so * ca * ci, -so * sa + co * ca * ci, ca * si];
    const normal = cross(toPerigee, along);
    const r = add(scale(toPerigee, a * (Math.cos(E) - e)), scale(along, a * root * Math.sin(E)));
    const Edot = rates.meanAnomalyRadS / (1 - e * Math.cos(E));
    const inPlane = add(scale(toPerigee, -a * Math.sin(E) * Edot), scale(along, a * root * Math.cos(E) * Edot));
    // The slow turning of the plane and of the perigee is part of the velocity, so that it is the rate of the position.
    const turning = add(scale(cross([0, 0, 1], r), rates.raanRadS), scale(cross(normal, r), rates.argPerigeeRadS));
    const v = add(inPlane, turning);
    if (orbit.frame === 'TEME') return { utcMs, positionTemeKm: r, velocityTemeKmS: v };
    const m = temeFromEqj(utcMs);
    return { utcMs, positionTemeKm: rotate(m, r), velocityTemeKmS: rotate(m, v) };
  };
}

/** Kepler's equation by Newton's method; for e up to 0.9 it ends within eight turns at 1e-13. */
export function eccentricAnomaly(meanAnomalyRad: number, eccentricity: number): number {
  const m = meanAnomalyRad % (2 * Math.PI);
  let E = eccentricity < 0.8 ? m : Math.PI * Math.sign(m === 0 ? 1 : m);
  for (let turn = 0; turn < 50; turn++) {
    const step = (E - eccentricity * Math.sin(E) - m) / (1 - eccentricity * Math.cos(E));
    E -= step;
    if (Math.abs(step) < 1e-13) break;
  }
  return E;
}

/** Time of one revolution from the mean motion of the elements, ms. */
export function periodMs(orbit: Orbit): number {
  if (orbit.kind === 'sgp4') return DAY_MS / orbit.meanMotionRevPerDay;
  return 2000 * Math.PI * Math.sqrt(orbit.semiMajorAxisKm ** 3 / EARTH_MU_KM3_S2);
}
