import type { KeplerOrbit } from '@handrail/eva/sky/orbit';
import * as fc from 'fast-check';

const FROM_UTC_MS = Date.UTC(1990, 0, 1);
const TO_UTC_MS = Date.UTC(2050, 0, 1);

export const epochs = fc.integer({ min: FROM_UTC_MS, max: TO_UTC_MS });

/** Spread evenly, ends included; a plain double of the generator crowds round zero. */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const steps = 1_000_000_000;
  return fc.integer({ min: 0, max: steps }).map((k) => min + (max - min) * (k / steps));
}

/** Any orbit that the program accepts: perigee 100 km over the equator's radius at least, eccentricity up to 0.9. */
export const orbits: fc.Arbitrary<KeplerOrbit> = fc
  .record({
    kind: fc.constantFrom('kepler-j2' as const, 'two-body' as const),
    frame: fc.constantFrom('TEME' as const, 'EQJ' as const),
    epochUtcMs: epochs,
    eccentricity: fc.oneof(fc.constant(0), evenly(0, 0.9)),
    perigeeKm: evenly(6478, 9000),
    inclinationRad: fc.oneof(fc.constantFrom(0, Math.PI, Math.PI / 2), evenly(0, Math.PI)),
    raanRad: evenly(-6.28, 6.28),
    argPerigeeRad: evenly(-6.28, 6.28),
    meanAnomalyRad: evenly(-6.28, 6.28),
  })
  .map(({ perigeeKm, ...rest }) => ({
    ...rest,
    name: 'any',
    semiMajorAxisKm: perigeeKm / (1 - rest.eccentricity),
    halfMeanMotionRateRevPerDay2: null,
  }));

/** Near-circular orbits of a station, 200 to 1500 km high. */
export const stationOrbits: fc.Arbitrary<KeplerOrbit> = orbits.map((orbit) => ({
  ...orbit,
  kind: 'kepler-j2' as const,
  eccentricity: orbit.eccentricity / 100,
  semiMajorAxisKm: 6578 + ((orbit.semiMajorAxisKm * 7) % 1300) + 70,
}));
