import type { Vector3 } from '@handrail/quantity/vector';
import type { Worksite } from '@handrail/eva/sky/worksite';
import { type LightRequest, worksiteLight } from '@handrail/eva/sky/worksite-light';
import { drumTriangles, plateTriangles } from '@handrail/eva/sky/shape-primitives';
import type { ShapeBody } from '@handrail/eva/sky/vehicle-shape';

/**
 * Light at 50 worksites of a station of 50,000 triangles over 24 h in steps of 10 s. First the answer is checked against
 * the same question asked every second, then it is timed. The station is invented: a core of drums, a lattice spine, two
 * wings that follow the Sun.
 * Run: npx tsx benchmarks/sky/worksite-light.ts
 */
function station(): LightRequest {
  const spine: number[] = [];
  for (let bay = 0; bay < 40; bay++) {
    const y = -20 + bay;
    for (const [x, z] of [
      [-1, -4],
      [1, -4],
      [-1, -6],
      [1, -6],
    ] as const)
      spine.push(...drumTriangles([x, y, z], 1, 0.05, 1, 12, 2));
    spine.push(...drumTriangles([0, y, -4], 0, 0.04, 2, 12, 2), ...drumTriangles([0, y, -6], 0, 0.04, 2, 12, 2));
    spine.push(...drumTriangles([-1, y, -5], 2, 0.04, 2, 12, 2), ...drumTriangles([1, y, -5], 2, 0.04, 2, 12, 2));
  }
  const bodies: ShapeBody[] = [
    { name: 'core', trianglesM: drumTriangles([0, 0, 0], 0, 2.2, 16, 96, 60), joint: null },
    { name: 'lock', trianglesM: drumTriangles([4, 0, 3], 2, 1.2, 3, 48, 16), joint: null },
    { name: 'spine', trianglesM: spine, joint: null },
    { name: 'wing-port', trianglesM: plateTriangles([0, -28, -5], [12, 0, 0], [0, 16, 0], 60), joint: 'wing-port' },
    {
      name: 'wing-starboard',
      trianglesM: plateTriangles([0, 28, -5], [12, 0, 0], [0, 16, 0], 60),
      joint: 'wing-starboard',
    },
    { name: 'radiator', trianglesM: plateTriangles([-4, 0, -12], [0, 8, 0], [0, 0, 10], 60), joint: null },
  ];
  const facing: Vector3 = [0, 0, -1];
  const wing = (name: string, y: number) => ({
    name,
    parent: null,
    pivotM: [0, y, -5] as const,
    axis: [0, 1, 0] as const,
    motion: { kind: 'tracks-sun', facing, biasRad: 0, limitsRad: null } as const,
  });
  const worksites: Worksite[] = [];
  for (let k = 0; k < 50; k++) {
    const angle = 2.399963 * k;
    const along = -7.5 + (15 * k) / 49;
    const normal: Vector3 = [0, Math.cos(angle), Math.sin(angle)];
    const onSpine = k % 2 === 1;
    worksites.push({
      name: `place ${k + 1}`,
      positionM: onSpine
        ? [Math.cos(angle) * 1.3, -19 + 38 * (k / 49), -5 + Math.sin(angle) * 1.3]
        : [along, 2.25 * normal[1], 2.25 * normal[2]],
      normal: onSpine ? null : normal,
      joint: null,
      clearanceM: 0.1,
    });
  }
  const startUtcMs = Date.UTC(2031, 8, 14, 6);
  return {
    orbit: {
      kind: 'kepler-j2',
      name: 'Fulmar Station',
      frame: 'TEME',
      epochUtcMs: Date.UTC(2031, 8, 14),
      semiMajorAxisKm: 6793,
      eccentricity: 0.0005,
      inclinationRad: (44 * Math.PI) / 180,
      raanRad: 1,
      argPerigeeRad: 0,
      meanAnomalyRad: 0,
      halfMeanMotionRateRevPerDay2: null,
    },
    attitude: { kind: 'local-vertical', lvlhFromBody: [1, 0, 0, 0] },
    shape: { bodies, joints: [wing('wing-port', -20), wing('wing-starboard', 20)] },
    worksites,
    startUtcMs,
    endUtcMs: startUtcMs + 86_400_000,
    stepS: 10,
  };
}

function main(): void {
  const request = station();
  const triangles = request.shape.bodies.reduce((sum, body) => sum + body.trianglesM.length / 9, 0);
  worksiteLight({ ...request, worksites: request.worksites.slice(0, 5) });
  const before = process.cpuUsage();
  const started = performance.now();
  const answer = worksiteLight(request);
  const wallS = (performance.now() - started) / 1000;
  const used = process.cpuUsage(before);
  const cpuS = (used.user + used.system) / 1e6;
  const lit = answer.worksites.reduce((sum, site) => sum + site.lit.length, 0);
  const fine = worksiteLight({ ...request, worksites: request.worksites.slice(0, 10), stepS: 1 });
  let missedMs = 0;
  let longestMs = 0;
  for (const [k, site] of fine.worksites.entries()) {
    const { apart, longest } = apartness(site.lit, answer.worksites[k]?.lit ?? []);
    missedMs += apart;
    longestMs = Math.max(longestMs, longest);
  }
  console.log(
    `${triangles} triangles, ${request.worksites.length} worksites, 24 h in steps of 10 s: ${cpuS.toFixed(2)} s of processor time (${wallS.toFixed(2)} s on the clock), ${answer.raysCast} rays, ${lit} windows of light`,
  );
  console.log(
    `against every second, 10 worksites: ${(missedMs / 1000).toFixed(1)} s of ${10 * 24} h differ; longest piece ${(longestMs / 1000).toFixed(1)} s`,
  );
  if (cpuS > 3) throw new Error(`slower than the 3 s of processor time asked for: ${cpuS.toFixed(2)} s`);
  if (longestMs > 10_000) throw new Error('a patch longer than the step was missed');
}

/** Time by which two window sets differ, and the longest piece of it, ms. */
function apartness(
  a: readonly (readonly [number, number])[],
  b: readonly (readonly [number, number])[],
): { apart: number; longest: number } {
  const edges = [...new Set([...a.flat(), ...b.flat()])].toSorted((p, q) => p - q);
  const inside = (set: typeof a, t: number): boolean => set.some(([from, to]) => from <= t && t < to);
  let apart = 0;
  let longest = 0;
  let run = 0;
  for (let k = 1; k < edges.length; k++) {
    const [from, to] = [edges[k - 1] as number, edges[k] as number];
    if (inside(a, (from + to) / 2) !== inside(b, (from + to) / 2)) {
      apart += to - from;
      run += to - from;
      longest = Math.max(longest, run);
    } else run = 0;
  }
  return { apart, longest };
}

main();
