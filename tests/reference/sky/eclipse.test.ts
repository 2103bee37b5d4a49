import { circularEclipseFraction } from '@handrail/eva/sky/beta-angle';
import { dayNight, seasonsWithoutNight } from '@handrail/eva/sky/day-night';
import {
  EARTH_AND_SUN,
  penumbraDepthRad,
  type ShadowBodies,
  shadowConeHalfAngles,
  sunlitFraction,
  umbraDepthRad,
} from '@handrail/eva/sky/earth-shadow';
import { windowsWherePositive } from '@handrail/eva/sky/find-windows';
import { periodMs, propagator } from '@handrail/eva/sky/propagate';
import { sunEqjKm, sunTemeKm, sunTrackTeme } from '@handrail/eva/sky/sun-position';
import { add, angleBetween, cross, dot, scale, unit } from '@handrail/eva/sky/vector-algebra';
import { totalS } from '@handrail/eva/sky/window-set';
import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';
import { circularOrbit } from './circular-orbit.ts';

const DEGREE = Math.PI / 180;
/** A round Earth and Sun with the constants of the published case. @source [VALLADO] algorithm 34 */
const ROUND: ShadowBodies = { equatorialRadiusKm: 6378.1363, flattening: 0, sunRadiusKm: 696_000 };

/** Argument of latitude, in degrees, at which a circular orbit enters and leaves a shadow, for a Sun that stands still. */
function arc(
  depth: typeof penumbraDepthRad,
  axisKm: number,
  inclinationDeg: number,
  sun: Vector3,
  bodies: ShadowBodies,
): readonly [number, number] {
  const at = (u: number): Vector3 => {
    const [c, s, i] = [Math.cos(u * DEGREE), Math.sin(u * DEGREE), inclinationDeg * DEGREE];
    return [axisKm * c, axisKm * s * Math.cos(i), axisKm * s * Math.sin(i)];
  };
  const [only] = windowsWherePositive((u) => depth(at(u), sun, bodies), {
    startUtcMs: 90,
    endUtcMs: 450,
    stepMs: 3,
    toleranceMs: 1e-6,
  });
  return only ?? [Number.NaN, Number.NaN];
}

describe('the arcs of one published eclipse [VALLADO] companion case of example 5-5, values of a commercial orbit program', () => {
  const sun: Vector3 = [77_523_937.090045, 119_297_006.803516, 51_716_128.096744];
  it('penumbra from 170.93° to 307.33°', () => {
    const [entry, exit] = arc(penumbraDepthRad, 6878.14, 28.5, sun, ROUND);
    expect(Math.abs(entry - 170.928)).toBeLessThan(0.1);
    expect(Math.abs(exit - 307.332)).toBeLessThan(0.1);
  });
  it('umbra from 171.46° to 306.80°', () => {
    const [entry, exit] = arc(umbraDepthRad, 6878.14, 28.5, sun, ROUND);
    expect(Math.abs(entry - 171.456)).toBeLessThan(0.1);
    expect(Math.abs(exit - 306.803)).toBeLessThan(0.1);
  });
});

describe('the cones', () => {
  it('have half-angles of 0.26412° and 0.26901° [VALLADO] algorithm 34', () => {
    const cones = shadowConeHalfAngles(149_597_870, ROUND);
    expect(Math.abs(cones.umbraRad / DEGREE - 0.26412)).toBeLessThan(1e-5);
    expect(Math.abs(cones.penumbraRad / DEGREE - 0.26901)).toBeLessThan(1e-5);
  });
});

describe('eclipse of a circular orbit in closed form', () => {
  it('at 10,000 km lasts 44.27 min (class text, worked problem: Re 6378, μ 3.986e5, Sun in the plane)', () => {
    const periodMin = (2 * Math.PI * Math.sqrt(16_378 ** 3 / 3.986e5)) / 60;
    expect(Math.abs(circularEclipseFraction(10_000, 0, 6378) * periodMin - 44.27)).toBeLessThan(0.01);
  });

  it.each([
    { beta: 0, share: 0.3901 },
    { beta: 10, share: 0.38833 },
    { beta: 20, share: 0.38272 },
    { beta: 30, share: 0.3722 },
    { beta: 40, share: 0.35434 },
    { beta: 50, share: 0.32349 },
    { beta: 60, share: 0.26333 },
    { beta: 65, share: 0.20439 },
    { beta: 68, share: 0.14102 },
    { beta: 70, share: 0.04607 },
    { beta: 70.219, share: 0 },
    { beta: 71, share: 0 },
  ])(
    'at 400 km and beta $beta° takes $share of the revolution [GILMORE] formula (MEMORY), table computed from it',
    ({ beta, share }) => {
      expect(Math.abs(circularEclipseFraction(400, beta * DEGREE) - share)).toBeLessThan(1e-5);
      expect(circularEclipseFraction(400, -beta * DEGREE)).toBe(circularEclipseFraction(400, beta * DEGREE));
    },
  );

  it.each([
    { km: 300, period: 90.52, longest: 36.59 },
    { km: 400, period: 92.56, longest: 36.11 },
    { km: 410, period: 92.765, longest: 36.07 },
    { km: 420, period: 92.97, longest: 36.03 },
    { km: 500, period: 94.616, longest: 35.75 },
    { km: 600, period: 96.687, longest: 35.49 },
    { km: 800, period: 100.874, longest: 35.13 },
    { km: 1000, period: 105.119, longest: 34.94 },
  ])(
    'at $km km: period $period min, longest eclipse $longest min [SMAD] columns (MEMORY), values computed',
    ({ km, period, longest }) => {
      const minutes = periodMs(circularOrbit(km, 0, 0, 0)) / 60_000;
      expect(Math.abs(minutes - period)).toBeLessThan(6e-4);
      expect(Math.abs(circularEclipseFraction(km, 0) * minutes - longest)).toBeLessThan(0.006);
    },
  );
});

describe('the search for roots against the closed form', () => {
  // A point Sun at a great distance and a round Earth make the cone a cylinder, which is what the closed form assumes.
  const cylinder: ShadowBodies = { equatorialRadiusKm: 6378.137, flattening: 0, sunRadiusKm: 0 };
  it.each([0, 15, 35, 52, 66, 70])('agrees to 1e-6 of a revolution at beta %i°', (beta) => {
    const sun: Vector3 = [1e13 * Math.cos(beta * DEGREE), 0, 1e13 * Math.sin(beta * DEGREE)];
    const [entry, exit] = arc(umbraDepthRad, 6778.137, 0, sun, cylinder);
    expect(Math.abs((exit - entry) / 360 - circularEclipseFraction(400, beta * DEGREE))).toBeLessThan(1e-6);
  });

  it('brackets it between umbra and penumbra for the real Sun', () => {
    for (const beta of [0, 30, 60]) {
      const sun: Vector3 = [149_597_870 * Math.cos(beta * DEGREE), 0, 149_597_870 * Math.sin(beta * DEGREE)];
      const share = circularEclipseFraction(400, beta * DEGREE, ROUND.equatorialRadiusKm);
      const [ue, ux] = arc(umbraDepthRad, 6778.1363, 0, sun, ROUND);
      const [pe, px] = arc(penumbraDepthRad, 6778.1363, 0, sun, ROUND);
      expect((ux - ue) / 360).toBeLessThan(share);
      expect((px - pe) / 360).toBeGreaterThan(share);
    }
  });
});

describe('the shadow of the oblate Earth', () => {
  /** How far the line of sight to a point of the Sun's limb passes over the ellipsoid; below zero it is cut. */
  const clearance = (from: Vector3, direction: Vector3): number => {
    const { equatorialRadiusKm: a, flattening: f } = EARTH_AND_SUN;
    const squeeze = (v: Vector3): Vector3 => [v[0] / a, v[1] / a, v[2] / (a * (1 - f))];
    const [o, d] = [squeeze(from), squeeze(direction)];
    const along = -dot(o, d) / dot(d, d);
    return along <= 0 ? 1 : norm(add(o, scale(d, along))) - 1;
  };
  const limbClearances = (from: Vector3, sun: Vector3): number[] => {
    const toSun = subtract(sun, from);
    const axis = unit(toSun);
    const u = unit(cross(axis, [0.3, 0.5, 0.8]));
    const v = cross(axis, u);
    const radius = Math.asin(EARTH_AND_SUN.sunRadiusKm / norm(toSun));
    return Array.from({ length: 360 }, (_, k) => {
      const angle = (k * Math.PI) / 180;
      const rim = add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle)));
      return clearance(from, add(scale(axis, Math.cos(radius)), scale(rim, Math.sin(radius))));
    });
  };

  it.each([
    { inclination: 44, node: 10, what: 'a station in summer' },
    { inclination: 82, node: 250, what: 'a nearly polar orbit' },
    { inclination: 60, node: 110, what: 'a middle orbit' },
  ])('has the same edges within 0.05 s as lines of sight to the rim of the Sun, for $what', ({ inclination, node }) => {
    const start = Date.UTC(2031, 5, 21);
    const orbit = circularOrbit(415, inclination, node, start);
    const state = propagator(orbit);
    const table = dayNight(orbit, start, start + 3 * 3_600_000);
    const search = { startUtcMs: start, endUtcMs: start + 3 * 3_600_000, stepMs: 60_000, toleranceMs: 1 };
    const night = windowsWherePositive(
      (t) => -Math.min(...limbClearances(state(t).positionTemeKm, sunTemeKm(t))),
      search,
    );
    const umbra = windowsWherePositive(
      (t) => -Math.max(...limbClearances(state(t).positionTemeKm, sunTemeKm(t))),
      search,
    );
    expect(night.length).toBeGreaterThan(0);
    for (const [name, a, b] of [
      ['penumbra', table.night, night],
      ['umbra', table.umbra, umbra],
    ] as const) {
      expect(a.length, name).toBe(b.length);
      for (const [k, [from, to]] of a.entries()) {
        expect(Math.abs(from - (b[k]?.[0] ?? 0)), `${name} entry`).toBeLessThan(50);
        expect(Math.abs(to - (b[k]?.[1] ?? 0)), `${name} exit`).toBeLessThan(50);
      }
    }
  });

  it('begins some seconds later or earlier than that of a round Earth', () => {
    const start = Date.UTC(2031, 5, 21);
    const state = propagator(circularOrbit(415, 82, 250, start));
    const search = { startUtcMs: start, endUtcMs: start + 5_400_000, stepMs: 30_000, toleranceMs: 1 };
    const edges = (bodies: ShadowBodies) =>
      windowsWherePositive((t) => penumbraDepthRad(state(t).positionTemeKm, sunTemeKm(t), bodies), search).flat();
    const apart = edges(EARTH_AND_SUN).map((edge, k) =>
      Math.abs(edge - (edges({ ...EARTH_AND_SUN, flattening: 0 })[k] ?? Number.NaN)),
    );
    expect(Math.max(...apart)).toBeGreaterThan(1000);
    expect(Math.max(...apart)).toBeLessThan(20_000);
  });
});

describe('mixing frames', () => {
  it('would shift an eclipse of 2020 by some seconds to a quarter minute: a Sun of J2000 against an orbit of date', () => {
    const start = Date.UTC(2020, 2, 1);
    const state = propagator(circularOrbit(415, 44, 90, start));
    const search = { startUtcMs: start, endUtcMs: start + 5_400_000, stepMs: 30_000, toleranceMs: 1 };
    const edge = (sun: (t: number) => Vector3): number =>
      windowsWherePositive((t) => penumbraDepthRad(state(t).positionTemeKm, sun(t)), search).flat()[1] ?? 0;
    const shift = Math.abs(edge(sunTemeKm) - edge(sunEqjKm)) / 1000;
    expect(shift).toBeGreaterThan(1);
    expect(shift).toBeLessThan(16);
  });
});

describe('the lit share of the Sun', () => {
  it('falls from one to zero across the penumbra and is one half where the limb of the Earth halves the disc', () => {
    const sun: Vector3 = [149_597_870, 0, 0];
    const at = (fromAxisRad: number): Vector3 => [-6800 * Math.cos(fromAxisRad), 6800 * Math.sin(fromAxisRad), 0];
    // The Earth's limb cuts the Sun's centre where the angle between their centres is the Earth's angular radius.
    let [low, high] = [0.5, 1.5];
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      const p = at(middle);
      const apart = angleBetween(scale(p, -1), subtract(sun, p));
      if (apart < Math.asin(6378.1363 / norm(p))) low = middle;
      else high = middle;
    }
    // The limb is nearly straight over half a degree: its curve takes away 0.1 % of the disc.
    expect(sunlitFraction(at(low), sun, ROUND)).toBeCloseTo(0.5, 2);
    let last = -1;
    for (let k = -100; k <= 100; k++) {
      const share = sunlitFraction(at(low + (k / 100) * 0.006), sun, ROUND);
      expect(share).toBeGreaterThanOrEqual(last);
      last = share;
    }
    expect(last).toBe(1);
    expect(sunlitFraction(at(low - 0.006), sun, ROUND)).toBe(0);
  });
});

describe('the share of an interval in sunlight', () => {
  it('is that of the Sun’s uncovered disc summed every second, within 2e-4', () => {
    const start = Date.UTC(2031, 5, 21);
    // A high beta angle makes the twilight long, so that how it counts can be seen.
    const orbit = circularOrbit(415, 44, 190, start);
    const end = start + 3 * 5_566_000;
    const state = propagator(orbit);
    const sun = sunTrackTeme(start, end);
    let sum = 0;
    for (let t = start + 500; t < end; t += 1000) sum += sunlitFraction(state(t).positionTemeKm, sun(t));
    const { litFraction, umbra, penumbra } = dayNight(orbit, start, end);
    expect(Math.abs(litFraction - sum / ((end - start) / 1000))).toBeLessThan(2e-4);
    expect(umbra.length).toBeGreaterThan(1);
    expect(totalS(penumbra) / ((end - start) / 1000)).toBeGreaterThan(2e-3);
  });
});

describe('seasons without night', () => {
  it('begin and end where the beta angle passes the limit of the closed form, within a quarter day', () => {
    const start = Date.UTC(2031, 0, 1);
    const orbit = circularOrbit(415, 60, 0, start);
    const seasons = seasonsWithoutNight(orbit, start, start + 365 * 86_400_000);
    expect(seasons.length).toBeGreaterThan(1);
    const state = propagator(orbit);
    // The cylinder of the closed form has no penumbra: widen the Earth by the Sun's angular radius at the distance of its limb.
    const beta = (t: number): number => {
      const { positionTemeKm: r, velocityTemeKmS: v } = state(t);
      return Math.abs(Math.PI / 2 - angleBetween(cross(r, v), sunTemeKm(t)));
    };
    const limit = Math.asin(6378.137 / 6793.137) + Math.asin(695_700 / 149_597_870.7);
    for (const [from, to] of seasons) {
      for (const edge of [from, to]) {
        if (edge === start || edge > start + 364.9 * 86_400_000) continue;
        const rate = Math.abs(beta(edge + 21_600_000) - beta(edge - 21_600_000)) / 0.5;
        // The oblate Earth is up to 0.4 % smaller, which is 0.7° of the limit.
        expect(Math.abs(beta(edge) - limit)).toBeLessThan(Math.max(0.25 * rate, 0.7 * DEGREE));
      }
    }
  });

  it('are none where the plane never leans far enough', () => {
    const start = Date.UTC(2031, 0, 1);
    expect(seasonsWithoutNight(circularOrbit(415, 30, 0, start), start, start + 100 * 86_400_000)).toEqual([]);
  });
});
