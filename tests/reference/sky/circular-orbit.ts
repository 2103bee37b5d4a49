import type { KeplerOrbit } from '@handrail/eva/sky/orbit';

/** A circular orbit for tests: angles in degrees, TEME unless said. */
export function circularOrbit(
  heightKm: number,
  inclinationDeg: number,
  raanDeg: number,
  epochUtcMs: number,
  kind: KeplerOrbit['kind'] = 'kepler-j2',
): KeplerOrbit {
  const degree = Math.PI / 180;
  return {
    kind,
    name: 'test orbit',
    frame: 'TEME',
    epochUtcMs,
    semiMajorAxisKm: 6378.137 + heightKm,
    eccentricity: 0,
    inclinationRad: inclinationDeg * degree,
    raanRad: raanDeg * degree,
    argPerigeeRad: 0,
    meanAnomalyRad: 0,
    halfMeanMotionRateRevPerDay2: null,
  };
}
