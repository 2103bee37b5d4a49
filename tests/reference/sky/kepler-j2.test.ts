import { EARTH_EQUATORIAL_RADIUS_KM, EARTH_J2, EARTH_MU_KM3_S2 } from '@handrail/eva/sky/earth';
import type { KeplerOrbit } from '@handrail/eva/sky/orbit';
import { eccentricAnomaly, j2Rates, propagate } from '@handrail/eva/sky/propagate';
import { cross, unit } from '@handrail/eva/sky/vector-algebra';
import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';
import { circularOrbit } from './circular-orbit.ts';

const DEGREE = Math.PI / 180;
type State = [number, number, number, number, number, number];

/** Point mass and J2 term in Cartesian form: the second method. @source [VALLADO] eq. 8-30 */
function rates([x, y, z, vx, vy, vz]: State): State {
  const r = Math.hypot(x, y, z);
  const k = (1.5 * EARTH_J2 * EARTH_MU_KM3_S2 * EARTH_EQUATORIAL_RADIUS_KM ** 2) / r ** 5;
  const g = EARTH_MU_KM3_S2 / r ** 3;
  const q = (5 * z * z) / (r * r);
  return [vx, vy, vz, -g * x - k * x * (1 - q), -g * y - k * y * (1 - q), -g * z - k * z * (3 - q)];
}

function integrate(start: State, seconds: number, stepS: number): State[] {
  const track: State[] = [start];
  const step = (s: State, d: State, h: number): State => s.map((value, k) => value + h * (d[k] as number)) as State;
  let s = start;
  for (let t = 0; t < seconds; t += stepS) {
    const a = rates(s);
    const b = rates(step(s, a, stepS / 2));
    const c = rates(step(s, b, stepS / 2));
    const d = rates(step(s, c, stepS));
    s = s.map(
      (value, k) =>
        value + (stepS / 6) * ((a[k] as number) + 2 * (b[k] as number) + 2 * (c[k] as number) + (d[k] as number)),
    ) as State;
    track.push(s);
  }
  return track;
}

describe('the drift of the plane by the Earth’s flattening', () => {
  it.each([28.5, 44, 60, 75])('at %i° is that of a numerical integration within 1 %', (inclinationDeg) => {
    const [state] = propagate(circularOrbit(415, inclinationDeg, 40, 0, 'two-body'), [0]);
    const { positionTemeKm: p, velocityTemeKmS: v } = state as NonNullable<typeof state>;
    const track = integrate([...p, ...v], 86_400, 20);
    const node = (s: State): number => {
      const h = cross([s[0], s[1], s[2]], [s[3], s[4], s[5]]);
      return Math.atan2(h[0], -h[1]);
    };
    // The node wobbles twice a revolution; a straight line through all samples leaves the drift.
    const n = track.length;
    const meanT = ((n - 1) * 20) / 2;
    const nodes = track.map((s) => node(s));
    const meanNode = nodes.reduce((a, b) => a + b, 0) / n;
    let [top, bottom] = [0, 0];
    for (const [k, value] of nodes.entries()) {
      top += (k * 20 - meanT) * (value - meanNode);
      bottom += (k * 20 - meanT) ** 2;
    }
    const computed = j2Rates(6793.137, 0, inclinationDeg * DEGREE).raanRadS;
    expect(Math.abs(top / bottom / computed - 1)).toBeLessThan(0.01);
  });

  it('turns a plane of 98.19° at 705 km once a year, which keeps it to the Sun (common practice: a Sun-synchronous orbit)', () => {
    const perYear = j2Rates(6378.137 + 705, 0, 98.19 * DEGREE).raanRadS * 365.2422 * 86_400;
    expect(perYear / (2 * Math.PI)).toBeCloseTo(1, 2);
  });

  it('leaves the perigee where it is at the critical inclination of 63.435° (5 sin² i = 4)', () => {
    expect(Math.abs(j2Rates(7000, 0.01, Math.asin(Math.sqrt(0.8))).argPerigeeRadS)).toBeLessThan(1e-18);
  });
});

describe('the mean motion under the Earth’s flattening', () => {
  it('over the equator is that of the exact circle of the same mean radius, r = a(1 − ¾ J2 (R/a)² (3 cos² i − 1))', () => {
    // The relation of mean axis and radius is first-order theory (D. Brouwer, Astronomical Journal 64 (1959), MEMORY); the
    // rate of a circle in the equator is exact: θ̇² = μ/r³ (1 + 3/2 J2 (R/r)²). What is left is of second order, 1e-6.
    const a = 6793.137;
    const rates = j2Rates(a, 0, 0);
    const r = a * (1 - 1.5 * EARTH_J2 * (EARTH_EQUATORIAL_RADIUS_KM / a) ** 2);
    const exact = Math.sqrt((EARTH_MU_KM3_S2 / r ** 3) * (1 + 1.5 * EARTH_J2 * (EARTH_EQUATORIAL_RADIUS_KM / r) ** 2));
    expect(Math.abs((rates.raanRadS + rates.argPerigeeRadS + rates.meanAnomalyRadS) / exact - 1)).toBeLessThan(1e-5);
  });
});

describe('a two-body ellipse', () => {
  const orbit: KeplerOrbit = {
    ...circularOrbit(900, 50, 20, 0, 'two-body'),
    eccentricity: 0.1,
    argPerigeeRad: 1,
    meanAnomalyRad: 2,
  };
  it('is that of a numerical integration without flattening within 10 m after three revolutions', () => {
    const [first, last] = propagate(orbit, [0, 20_000_000]);
    const { positionTemeKm: p, velocityTemeKmS: v } = first as NonNullable<typeof first>;
    let s: State = [...p, ...v];
    const flat = (u: State): State => {
      const g = EARTH_MU_KM3_S2 / Math.hypot(u[0], u[1], u[2]) ** 3;
      return [u[3], u[4], u[5], -g * u[0], -g * u[1], -g * u[2]];
    };
    const h = 5;
    const step = (x: State, d: State, w: number): State => x.map((value, k) => value + w * (d[k] as number)) as State;
    for (let t = 0; t < 20_000; t += h) {
      const [a] = [flat(s)];
      const b = flat(step(s, a, h / 2));
      const c = flat(step(s, b, h / 2));
      const d = flat(step(s, c, h));
      s = s.map(
        (value, k) =>
          value + (h / 6) * ((a[k] as number) + 2 * (b[k] as number) + 2 * (c[k] as number) + (d[k] as number)),
      ) as State;
    }
    expect(norm(subtract((last as NonNullable<typeof last>).positionTemeKm, [s[0], s[1], s[2]]))).toBeLessThan(0.01);
  });

  it('keeps its energy and its plane', () => {
    const states = propagate(
      orbit,
      Array.from({ length: 50 }, (_, k) => k * 300_000),
    );
    const energy = states.map(
      ({ positionTemeKm: r, velocityTemeKmS: v }) => norm(v) ** 2 / 2 - EARTH_MU_KM3_S2 / norm(r),
    );
    for (const value of energy) expect(value).toBeCloseTo(-EARTH_MU_KM3_S2 / (2 * orbit.semiMajorAxisKm), 8);
    const normals = states.map(({ positionTemeKm: r, velocityTemeKmS: v }): Vector3 => unit(cross(r, v)));
    for (const normal of normals) expect(norm(subtract(normal, normals[0] as Vector3))).toBeLessThan(1e-12);
  });
});

describe('the velocity', () => {
  it.each([
    { kind: 'kepler-j2', frame: 'TEME' },
    { kind: 'kepler-j2', frame: 'EQJ' },
    { kind: 'two-body', frame: 'TEME' },
  ] as const)('is the rate of the position, turning of the plane included ($kind, $frame)', ({ kind, frame }) => {
    const epochUtcMs = Date.UTC(2031, 8, 14);
    const ellipse: KeplerOrbit = { ...circularOrbit(900, 50, 20, epochUtcMs, kind), frame, eccentricity: 0.05 };
    for (const minutes of [7, 33, 71]) {
      const t = epochUtcMs + minutes * 60_000;
      const [before, now, after] = propagate(ellipse, [t - 500, t, t + 500]).map((state) => state);
      if (before === undefined || now === undefined || after === undefined)
        throw new Error('three states were asked for');
      // Half a second either way: the third derivative leaves 0.3 mm/s; the turning of the plane is 10 mm/s.
      expect(norm(subtract(subtract(after.positionTemeKm, before.positionTemeKm), now.velocityTemeKmS))).toBeLessThan(
        1e-6,
      );
    }
  });
});

describe('Kepler’s equation', () => {
  it('gives E = 220.512074° for M = 235.4° and e = 0.4 [VALLADO] example 2-1', () => {
    const E = eccentricAnomaly(235.4 * DEGREE, 0.4) / DEGREE;
    expect((E + 360) % 360).toBeCloseTo(220.512074, 5);
  });
});
