import type { AttitudeLaw } from '@handrail/eva/sky/attitude';
import { windowsWherePositive } from '@handrail/eva/sky/find-windows';
import { noHint, rayCaster } from '@handrail/eva/sky/ray-caster';
import { sunInBody } from '@handrail/eva/sky/sun-in-body';
import type { Joint, ShapeBody } from '@handrail/eva/sky/vehicle-shape';
import { add, angleBetween, cross, dot, scale, unit } from '@handrail/eva/sky/vector-algebra';
import { difference, type Intervals, intersection, totalS, union } from '@handrail/eva/sky/window-set';
import { sunAtWorksite, sunInSightWindows } from '@handrail/eva/sky/sun-at-worksite';
import type { Worksite } from '@handrail/eva/sky/worksite';
import { type LightRequest, worksiteLight, worksiteLightWindows } from '@handrail/eva/sky/worksite-light';
import { dayNight } from '@handrail/eva/sky/day-night';
import { turnAbout, rotate } from '@handrail/eva/sky/rotation';
import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';
import { inventedStation } from './invented-station.ts';
import { drumTriangles, plateTriangles } from '@handrail/eva/sky/shape-primitives';
import { circularOrbit } from './circular-orbit.ts';

const START = Date.UTC(2031, 8, 14, 6);
const ORBIT = circularOrbit(415, 44, 57, START);
const LEVEL: AttitudeLaw = { kind: 'local-vertical', lvlhFromBody: [1, 0, 0, 0] };
/** A fixed attitude that lets the Sun go right round the vehicle once a revolution is the level one; all windows last some orbits. */
const END = START + 5 * 3_600_000;

/** Where the Sun stands in body axes in the middle of the second day: what shall cast a shadow is put there. */
const MIDDAY_SUN: Vector3 = (() => {
  const second = dayNight(ORBIT, START, END).day[1] ?? [START, END];
  return sunInBody(ORBIT, LEVEL, START, END)((second[0] + second[1]) / 2);
})();

function place(positionM: Vector3, over: Partial<Worksite> = {}): Worksite {
  return { name: 'place', positionM, normal: null, joint: null, clearanceM: 0.05, ...over };
}

function lit(bodies: readonly ShapeBody[], worksite: Worksite, joints: readonly Joint[] = [], stepS = 10): Intervals {
  const request: LightRequest = {
    orbit: ORBIT,
    attitude: LEVEL,
    shape: { bodies, joints },
    worksites: [worksite],
    startUtcMs: START,
    endUtcMs: END,
    stepS,
  };
  return worksiteLight(request).worksites[0]?.lit ?? [];
}

/** Where the Sun in body axes meets a condition, in daylight. */
function analytic(positive: (sun: Vector3) => number): Intervals {
  const sun = sunInBody(ORBIT, LEVEL, START, END);
  const { day } = dayNight(ORBIT, START, END);
  return intersection(
    day,
    windowsWherePositive((t) => positive(sun(t)), { startUtcMs: START, endUtcMs: END, stepMs: 10_000, toleranceMs: 1 }),
  );
}

function worstEdgeS(a: Intervals, b: Intervals): number {
  expect(a.length).toBe(b.length);
  return Math.max(
    ...a.map(
      (window, k) => Math.max(Math.abs(window[0] - (b[k]?.[0] ?? 0)), Math.abs(window[1] - (b[k]?.[1] ?? 0))) / 1000,
    ),
  );
}

/** A ball of triangles by splitting an octahedron. */
function ball(center: Vector3, radiusM: number, splits: number): number[] {
  let faces: [Vector3, Vector3, Vector3][] = [];
  for (const x of [1, -1])
    for (const y of [1, -1])
      for (const z of [1, -1])
        faces.push([
          [x, 0, 0],
          [0, y, 0],
          [0, 0, z],
        ]);
  for (let k = 0; k < splits; k++) {
    faces = faces.flatMap(([a, b, c]) => {
      const [ab, bc, ca] = [unit(add(a, b)), unit(add(b, c)), unit(add(c, a))];
      return [
        [a, ab, ca],
        [ab, b, bc],
        [ca, bc, c],
        [ab, bc, ca],
      ] as [Vector3, Vector3, Vector3][];
    });
  }
  return faces.flat().flatMap((corner) => add(center, scale(corner, radiusM)));
}

describe('own shadow by rays against shadows known in closed form', () => {
  it('of a sphere: blocked within asin(R/d) of its centre; edges within 0.5 s', () => {
    const center = add(scale(MIDDAY_SUN, 7), [0.5, 0.6, -0.3]);
    const toCenter = unit(center);
    const half = Math.asin(2 / norm(center));
    const expected = analytic((sun) => angleBetween(sun, toCenter) - half);
    const found = lit([{ name: 'ball', trianglesM: ball(center, 2, 6), joint: null }], place([0, 0, 0]));
    expect(totalS(expected)).toBeLessThan(totalS(dayNight(ORBIT, START, END).day) - 100);
    expect(worstEdgeS(found, expected)).toBeLessThan(0.5);
  });

  it('of a plate: blocked where the line to the Sun meets the rectangle; edges within 0.2 s', () => {
    const [u, v, center]: readonly Vector3[] = [[3, 0, 0], [0, 2.5, 1], add(scale(MIDDAY_SUN, 5), [0.4, -0.3, 0.2])];
    const normal = cross(u as Vector3, v as Vector3);
    // Positive outside the rectangle: the greater of the two distances from its middle, in half-widths, less one.
    const outside = (sun: Vector3): number => {
      const along = dot(center as Vector3, normal) / dot(sun, normal);
      if (!(along > 0)) return 1;
      const hit = subtract(scale(sun, along), center as Vector3);
      // u and v are at right angles here.
      const [p, q] = [
        dot(hit, u as Vector3) / dot(u as Vector3, u as Vector3),
        dot(hit, v as Vector3) / dot(v as Vector3, v as Vector3),
      ];
      return Math.min(1, Math.max(Math.abs(p), Math.abs(q)) * 2 - 1);
    };
    const found = lit(
      [{ name: 'plate', trianglesM: plateTriangles(center as Vector3, u as Vector3, v as Vector3, 7), joint: null }],
      place([0, 0, 0]),
    );
    expect(worstEdgeS(found, analytic(outside))).toBeLessThan(0.2);
    expect(found.length).toBeGreaterThan(dayNight(ORBIT, START, END).day.length);
  });

  it('of the surface worked on: lit while the Sun is over it, with no ray needed', () => {
    const normal = unit([0.4, -0.5, -0.7]);
    const found = lit([], place([0, 0, 0], { normal }));
    expect(
      worstEdgeS(
        found,
        analytic((sun) => dot(sun, normal)),
      ),
    ).toBeLessThan(0.2);
  });

  it('of a low Sun: lit only while it stands 25° or more over the surface, when that is asked', () => {
    const normal = unit([0.4, -0.5, -0.7]);
    const found = lit([], place([0, 0, 0], { normal, lowestSunRad: (25 * Math.PI) / 180 }));
    expect(
      worstEdgeS(
        found,
        analytic((sun) => Math.asin(dot(sun, normal)) - (25 * Math.PI) / 180),
      ),
    ).toBeLessThan(0.2);
  });

  it('is not cast by what is nearer than the clearance', () => {
    const under = { name: 'deck', trianglesM: plateTriangles([0, 0, -0.04], [50, 0, 0], [0, 50, 0], 2), joint: null };
    expect(totalS(lit([under], place([0, 0, 0])))).toBeLessThan(
      totalS(lit([under], place([0, 0, 0], { clearanceM: 10 }))),
    );
  });
});

describe('the hierarchy against a search through all triangles', () => {
  /** Signs of volumes, an own formula: is the triangle crossed by the ray beyond `near`? */
  const crosses = (o: Vector3, d: Vector3, [a, b, c]: readonly [Vector3, Vector3, Vector3], near: number): boolean => {
    const normal = cross(subtract(b, a), subtract(c, a));
    const facing = dot(normal, d);
    if (Math.abs(facing) < 1e-12) return false;
    const t = dot(normal, subtract(a, o)) / facing;
    if (t <= near) return false;
    const p = add(o, scale(d, t));
    const side = (x: Vector3, y: Vector3): boolean => dot(cross(subtract(y, x), subtract(p, x)), normal) >= 0;
    return side(a, b) && side(b, c) && side(c, a);
  };

  it('finds the same rays blocked, for 1200 rays through drums and turned wings', () => {
    const { joints } = inventedStation().shape;
    const bodies: ShapeBody[] = [
      { name: 'core', trianglesM: drumTriangles([0, 0, 0], 0, 2.2, 16, 14, 4), joint: null },
      { name: 'boom', trianglesM: drumTriangles([0, 0, -5], 1, 0.8, 40, 9, 8), joint: null },
      { name: 'wing-port', trianglesM: plateTriangles([0, -28, -5], [12, 0, 0], [0, 16, 0], 5), joint: 'wing-port' },
      {
        name: 'wing-starboard',
        trianglesM: plateTriangles([0, 28, -5], [12, 0, 0], [0, 16, 0], 5),
        joint: 'wing-starboard',
      },
    ];
    const caster = rayCaster({ bodies, joints });
    let blocked = 0;
    for (let k = 0; k < 1200; k++) {
      // Spread by the golden angle; no randomness, no two alike.
      const z = 1 - (2 * (k + 0.5)) / 1200;
      const turn = k * 2.399963229728653;
      const d: Vector3 = [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn), z];
      const from: Vector3 = [4 * Math.sin(k * 0.7), 25 * Math.sin(k * 0.31), -5 + 5 * Math.cos(k * 0.17)];
      const poses = caster.posesAt(d);
      const found = caster.blockedBy(from, d, poses, 0.05, noHint());
      let expected = false;
      for (const body of bodies) {
        const pose = poses[caster.carriers.indexOf(body.joint)] as NonNullable<(typeof poses)[number]>;
        const corner = (at: number): Vector3 =>
          add(
            rotate(pose.turn, [
              body.trianglesM[at] as number,
              body.trianglesM[at + 1] as number,
              body.trianglesM[at + 2] as number,
            ]),
            pose.shiftM,
          );
        for (let at = 0; at < body.trianglesM.length && !expected; at += 9)
          expected = crosses(from, d, [corner(at), corner(at + 3), corner(at + 6)], 0.05);
      }
      expect(found >= 0, `ray ${k}`).toBe(expected);
      if (expected) blocked++;
    }
    expect(blocked).toBeGreaterThan(200);
    expect(blocked).toBeLessThan(1150);
  });

  it('answers the same with the memory of the last triangle as without', () => {
    const request = inventedStation();
    const caster = rayCaster(request.shape);
    const hint = noHint();
    let blocked = 0;
    for (let k = 0; k < 2000; k++) {
      const d: Vector3 = unit([Math.cos(k / 300), 0.4 * Math.sin(k / 170), Math.sin(k / 300)]);
      const poses = caster.posesAt(d);
      const found = caster.blockedBy([3, -6, -3.2], d, poses, 0.05, hint);
      expect(found >= 0).toBe(caster.blockedBy([3, -6, -3.2], d, poses, 0.05, noHint()) >= 0);
      if (found >= 0) blocked++;
    }
    expect(blocked).toBeGreaterThan(100);
  });
});

describe('a joint that follows the Sun', () => {
  const facing: Vector3 = [0.2, 0, -1];
  const joint: Joint = {
    name: 'wing',
    parent: null,
    pivotM: [1, 2, 3],
    axis: [0, 1, 0],
    motion: { kind: 'tracks-sun', facing, biasRad: 0, limitsRad: null },
  };
  const wing: ShapeBody = {
    name: 'wing',
    trianglesM: plateTriangles([1, 6, 3], [4, 0, 0], [0, 6, 0], 2),
    joint: 'wing',
  };

  it('turns to the angle that looks most nearly at the Sun, as a search over all angles finds', () => {
    const caster = rayCaster({ bodies: [wing], joints: [joint] });
    for (const sun of [
      [0.6, 0.3, -0.74],
      [-0.5, -0.7, 0.5],
      [0.1, 0.95, 0.3],
    ].map((v) => unit(v as unknown as Vector3))) {
      const turned = dot(rotate(caster.posesAt(sun)[1]?.turn ?? turnAbout([0, 1, 0], 9), unit(facing)), sun);
      let best = -1;
      for (let k = 0; k < 3600; k++)
        best = Math.max(best, dot(rotate(turnAbout([0, 1, 0], (k * Math.PI) / 1800), unit(facing)), sun));
      expect(turned).toBeCloseTo(best, 5);
    }
  });

  it('stops at the nearer of its limits', () => {
    const limited: Joint = {
      ...joint,
      motion: { kind: 'tracks-sun', facing: [0, 0, -1], biasRad: 0, limitsRad: [-0.5, 0.5] },
    };
    const caster = rayCaster({ bodies: [], joints: [limited] });
    const angle = (sun: Vector3): number => {
      const m = caster.posesAt(unit(sun))[1]?.turn;
      return Math.atan2(-(m?.[6] ?? 0), m?.[0] ?? 0);
    };
    expect(angle([0, 0, -1])).toBeCloseTo(0, 12);
    // Turning by +θ about y carries −z towards −x.
    expect(angle([-1, 0, -0.2])).toBeCloseTo(0.5, 12);
    expect(angle([1, 0, -0.2])).toBeCloseTo(-0.5, 12);
    expect(angle([-Math.sin(0.3), 0, -Math.cos(0.3)])).toBeCloseTo(0.3, 12);
  });

  it('carries a worksite on its sunny side into light all day, and on its back into none', () => {
    const front = place([1, 6, 2.9], { normal: [0.2, 0, -1], joint: 'wing', name: 'front' });
    const back = place([1, 6, 3.1], { normal: [-0.2, 0, 1], joint: 'wing', name: 'back' });
    const { day } = dayNight(ORBIT, START, END);
    expect(totalS(difference(day, lit([wing], front, [joint])))).toBeLessThan(0.5);
    expect(totalS(lit([wing], back, [joint]))).toBe(0);
  });

  it('follows the Sun as well from an arm that stands askew', () => {
    const arm: Joint = {
      name: 'arm',
      parent: null,
      pivotM: [0, 0, 0],
      axis: [0, 0, 1],
      motion: { kind: 'held', angleRad: 1.1 },
    };
    const caster = rayCaster({ bodies: [wing], joints: [{ ...joint, parent: 'arm' }, arm] });
    const sun = unit([0.6, 0.3, -0.74]);
    const turned = rotate(caster.posesAt(sun)[2]?.turn ?? turnAbout([0, 1, 0], 9), unit(facing));
    const axis = rotate(turnAbout([0, 0, 1], 1.1), [0, 1, 0]);
    let best = -1;
    for (let k = 0; k < 3600; k++) {
      const tried = rotate(turnAbout(axis, (k * Math.PI) / 1800), rotate(turnAbout([0, 0, 1], 1.1), unit(facing)));
      best = Math.max(best, dot(tried, sun));
    }
    expect(dot(turned, sun)).toBeCloseTo(best, 5);
  });

  it('casts a shadow that passes with a parent joint through the same point as one joint alone would', () => {
    const arm: Joint = {
      name: 'arm',
      parent: null,
      pivotM: [0, 0, 0],
      axis: [0, 0, 1],
      motion: { kind: 'held', angleRad: Math.PI / 2 },
    };
    const onArm: Joint = { ...joint, parent: 'arm', motion: { kind: 'held', angleRad: 0.4 } };
    const poses = rayCaster({ bodies: [], joints: [onArm, arm] }).posesAt([1, 0, 0]);
    const point: Vector3 = [1, 6, 3];
    const expected = rotate(
      turnAbout([0, 0, 1], Math.PI / 2),
      add([1, 2, 3], rotate(turnAbout([0, 1, 0], 0.4), subtract(point, [1, 2, 3]))),
    );
    const pose = poses[2] as NonNullable<(typeof poses)[number]>;
    expect(norm(subtract(add(rotate(pose.turn, point), pose.shiftM), expected))).toBeLessThan(1e-12);
  });
});

describe('the memory of the last triangle', () => {
  it('does not bring back a surface that is nearer than the clearance', () => {
    const deck = { name: 'deck', trianglesM: plateTriangles([0, 0, -0.04], [50, 0, 0], [0, 50, 0]), joint: null };
    const caster = rayCaster({ bodies: [deck], joints: [] });
    const poses = caster.posesAt([1, 0, 0]);
    const hint = noHint();
    expect(caster.blockedBy([5, 3, 0], [0, 0, -1], poses, 0, hint)).toBe(0);
    expect(hint.triangle).toBeGreaterThanOrEqual(0);
    expect(caster.blockedBy([5, 3, 0], [0, 0, -1], poses, 0.05, hint)).toBe(-1);
  });
});

describe('light over a whole station', () => {
  const request: LightRequest = {
    ...inventedStation(),
    orbit: ORBIT,
    startUtcMs: START,
    endUtcMs: START + 4 * 3_600_000,
  };
  const some = request.worksites.filter((_, k) => k % 7 === 0);

  it('in steps of 10 s misses no patch longer than 10 s that steps of 1 s find', () => {
    const coarse = worksiteLight({ ...request, worksites: some });
    const fine = worksiteLight({ ...request, worksites: some, stepS: 1 });
    for (const [k, site] of fine.worksites.entries()) {
      const other = coarse.worksites[k]?.lit ?? [];
      const apart = union(difference(site.lit, other), difference(other, site.lit));
      for (const [from, to] of apart) expect((to - from) / 1000, site.worksite).toBeLessThanOrEqual(10);
    }
  });

  it('leaves no instant without a state', () => {
    for (const site of worksiteLight({ ...request, worksites: some }).worksites) {
      let at = request.startUtcMs;
      for (const span of site.spans) {
        expect(span.startUtcMs).toBeCloseTo(at, 3);
        at = span.endUtcMs;
      }
      expect(at).toBeCloseTo(request.endUtcMs, 3);
    }
  });

  it('at one instant says what the windows say, and how high the Sun stands', () => {
    const worksite = some[2] as Worksite;
    const answer = worksiteLight({ ...request, worksites: [worksite] }).worksites[0];
    const at = sunAtWorksite(request, worksite);
    for (let k = 1; k < 60; k++) {
      const t = request.startUtcMs + k * 239_000;
      const span = answer?.spans.find((s) => s.startUtcMs <= t && t < s.endUtcMs);
      if (span === undefined || Math.min(t - span.startUtcMs, span.endUtcMs - t) < 10_000) continue;
      const now = at(t);
      expect(now.state).toBe(span.state);
      if (worksite.normal !== null)
        expect(now.elevationRad).toBeCloseTo(Math.asin(dot(unit(worksite.normal), now.sunBody)), 10);
    }
  });

  it('keeps only light that lasts, when asked for 20 min', () => {
    const windows = worksiteLightWindows({ ...request, worksites: some }, 1200);
    const all = worksiteLight({ ...request, worksites: some });
    let [kept, dropped] = [0, 0];
    for (const site of all.worksites) {
      const long = windows.get(site.worksite) ?? [];
      expect(long).toEqual(site.lit.filter(([from, to]) => to - from >= 1_200_000));
      kept += long.length;
      dropped += site.lit.length - long.length;
    }
    expect(kept).toBeGreaterThan(0);
    expect(dropped).toBeGreaterThan(0);
  });

  it('stops when told to and keeps what is finished', () => {
    let seen = 0;
    const answer = worksiteLight(request, {
      onProgress: (fraction) => {
        seen = fraction;
      },
      shouldStop: () => seen > 0.2,
    });
    expect(answer.complete).toBe(false);
    expect(answer.worksites.length).toBeGreaterThan(5);
    expect(answer.worksites.length).toBeLessThan(20);
  });
});

describe('the Sun in the eyes', () => {
  it('is where the angle to the line of sight is small, by day, and nothing stands between', () => {
    const direction = unit(add(MIDDAY_SUN, [0.1, 0.1, 0.1]));
    const sight = { name: 'look', from: place([0, 0, 0]), direction, withinRad: 0.5 };
    const vehicle = { orbit: ORBIT, attitude: LEVEL, shape: { bodies: [], joints: [] } };
    const open = sunInSightWindows(vehicle, sight, START, END, 10);
    expect(
      worstEdgeS(
        open,
        analytic((sun) => 0.5 - angleBetween(sun, direction)),
      ),
    ).toBeLessThan(0.3);
    expect(totalS(open)).toBeGreaterThan(60);
    const screen = {
      name: 'screen',
      trianglesM: plateTriangles(scale(direction, 3), [40, 0, 0], [0, 40, 0], 1),
      joint: null,
    };
    expect(
      totalS(sunInSightWindows({ ...vehicle, shape: { bodies: [screen], joints: [] } }, sight, START, END, 10)),
    ).toBeLessThan(totalS(open) / 10);
  });
});
