import { betaAngleOfPlaneRad, betaAngleRad } from '@handrail/eva/sky/beta-angle';
import type { KeplerOrbit } from '@handrail/eva/sky/orbit';
import { propagate } from '@handrail/eva/sky/propagate';
import { describe, expect, it } from 'vitest';

const DEGREE = Math.PI / 180;
const plane = (i: number, node: number, ra: number, dec: number): number =>
  betaAngleOfPlaneRad(i * DEGREE, node * DEGREE, ra * DEGREE, dec * DEGREE) / DEGREE;

describe('the beta angle', () => {
  it.each([
    { i: 51.6, node: 90, ra: 0, dec: 0, beta: 51.6 },
    { i: 51.6, node: 180, ra: 90, dec: 23.4393, beta: 75.039 },
  ])(
    'of inclination $i°, node $node°, Sun at $ra° / $dec° is $beta° [SMAD] formula, computed',
    ({ i, node, ra, dec, beta }) => {
      // sin β = cos δ sin i sin(Ω − α) + sin δ cos i; the second case has sin(Ω − α) = 1: β = i + δ.
      expect(Math.abs(plane(i, node, ra, dec) - beta)).toBeLessThan(0.001);
    },
  );

  it('equals the second published form with the ecliptic longitude of the Sun [VALLADO]', () => {
    const eps = 23.4393 * DEGREE;
    for (let longitude = 0; longitude < 360; longitude += 30) {
      for (const node of [0, 75, 190]) {
        const g = longitude * DEGREE;
        const [i, w] = [44 * DEGREE, node * DEGREE];
        const second = Math.asin(
          Math.cos(g) * Math.sin(w) * Math.sin(i) -
            Math.sin(g) * Math.cos(eps) * Math.cos(w) * Math.sin(i) +
            Math.sin(g) * Math.sin(eps) * Math.cos(i),
        );
        const ra = Math.atan2(Math.cos(eps) * Math.sin(g), Math.cos(g));
        const dec = Math.asin(Math.sin(eps) * Math.sin(g));
        expect(betaAngleOfPlaneRad(i, w, ra, dec)).toBeCloseTo(second, 12);
      }
    }
  });

  it('from position and velocity equals that from the plane', () => {
    const epochUtcMs = Date.UTC(2031, 8, 14);
    const orbit: KeplerOrbit = {
      kind: 'two-body',
      name: 'circle',
      frame: 'TEME',
      epochUtcMs,
      semiMajorAxisKm: 6793,
      eccentricity: 0,
      inclinationRad: 44 * DEGREE,
      raanRad: 70 * DEGREE,
      argPerigeeRad: 0,
      meanAnomalyRad: 1,
      halfMeanMotionRateRevPerDay2: null,
    };
    const [state] = propagate(orbit, [epochUtcMs]);
    const [ra, dec] = [200 * DEGREE, -8 * DEGREE];
    const sun = [Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec)] as const;
    expect(betaAngleRad(state as NonNullable<typeof state>, sun)).toBeCloseTo(
      betaAngleOfPlaneRad(44 * DEGREE, 70 * DEGREE, ra, dec),
      10,
    );
  });
});
