import { inRange, instantInRange } from './in-range.ts';

/**
 * An orbit as plain data, so that it can cross to a worker. Which model moves it is part of the data and never guessed:
 * - `sgp4`: mean elements of the SGP4 theory, from an orbit mean-elements message or two-line elements;
 * - `kepler-j2`: Keplerian elements averaged over a revolution, with the secular drift by the Earth's flattening;
 * - `two-body`: a fixed ellipse; the plane of a low orbit then stays where a real one turns some degrees a day.
 */
export type Orbit = Sgp4Orbit | KeplerOrbit;

export interface Sgp4Orbit {
  readonly kind: 'sgp4';
  readonly name: string;
  readonly catalogueNumber: string;
  readonly epochUtcMs: number;
  readonly meanMotionRevPerDay: number;
  readonly eccentricity: number;
  readonly inclinationDeg: number;
  readonly raanDeg: number;
  readonly argPerigeeDeg: number;
  readonly meanAnomalyDeg: number;
  /** Drag term, 1 / Earth radii. */
  readonly bstarPerEarthRadius: number;
  /** Half the rate of the mean motion as the element set gives it, rev/day²; null: not given. Used only to estimate the growth of error. */
  readonly halfMeanMotionRateRevPerDay2: number | null;
  /** The two lines themselves where they were the source; null for a message. */
  readonly lines: readonly [string, string] | null;
  readonly source: 'two-line elements' | 'OMM KVN' | 'OMM JSON';
  /** What the message did not say and was taken as usual, in words; empty when nothing was. */
  readonly assumptions: readonly string[];
}

export interface KeplerOrbit {
  readonly kind: 'kepler-j2' | 'two-body';
  readonly name: string;
  readonly frame: 'TEME' | 'EQJ';
  readonly epochUtcMs: number;
  readonly semiMajorAxisKm: number;
  readonly eccentricity: number;
  readonly inclinationRad: number;
  readonly raanRad: number;
  readonly argPerigeeRad: number;
  readonly meanAnomalyRad: number;
  /** As for SGP4, if known; null: not known, and the estimate of error says so. */
  readonly halfMeanMotionRateRevPerDay2: number | null;
}

/** Passes a Keplerian orbit whose numbers all lie in range. @throws Fault `sky/out-of-range` */
export function checkedKeplerOrbit(orbit: KeplerOrbit): KeplerOrbit {
  instantInRange('the epoch of the elements', orbit.epochUtcMs);
  inRange('semi-major axis', orbit.semiMajorAxisKm, 6478, 100_000, 'km');
  inRange('eccentricity', orbit.eccentricity, 0, 0.9, '');
  inRange('inclination', orbit.inclinationRad, 0, Math.PI, 'rad');
  inRange('right ascension of the ascending node', orbit.raanRad, -2 * Math.PI, 2 * Math.PI, 'rad');
  inRange('argument of perigee', orbit.argPerigeeRad, -2 * Math.PI, 2 * Math.PI, 'rad');
  inRange('mean anomaly', orbit.meanAnomalyRad, -2 * Math.PI, 2 * Math.PI, 'rad');
  inRange('perigee radius', orbit.semiMajorAxisKm * (1 - orbit.eccentricity), 6478, 100_000, 'km');
  if (orbit.halfMeanMotionRateRevPerDay2 !== null) {
    inRange('half the rate of the mean motion', orbit.halfMeanMotionRateRevPerDay2, -1, 1, 'rev/day²');
  }
  return orbit;
}

/** Passes an SGP4 orbit whose numbers all lie in range. @throws Fault `sky/out-of-range` */
export function checkedSgp4Orbit(orbit: Sgp4Orbit): Sgp4Orbit {
  instantInRange('the epoch of the elements', orbit.epochUtcMs);
  inRange('mean motion', orbit.meanMotionRevPerDay, 0.05, 18, 'rev/day');
  inRange('eccentricity', orbit.eccentricity, 0, 0.99, '');
  inRange('inclination', orbit.inclinationDeg, 0, 180, '°');
  inRange('right ascension of the ascending node', orbit.raanDeg, 0, 360, '°');
  inRange('argument of perigee', orbit.argPerigeeDeg, 0, 360, '°');
  inRange('mean anomaly', orbit.meanAnomalyDeg, 0, 360, '°');
  inRange('drag term B*', orbit.bstarPerEarthRadius, -1, 1, '1/Earth radii');
  if (orbit.halfMeanMotionRateRevPerDay2 !== null) {
    inRange('half the rate of the mean motion', orbit.halfMeanMotionRateRevPerDay2, -1, 1, 'rev/day²');
  }
  return orbit;
}
