import { boxTriangles, drumTriangles, plateTriangles } from '@handrail/eva/sky/shape-primitives';
import type { Joint, ShapeBody } from '@handrail/eva/sky/vehicle-shape';
import type { Worksite } from '@handrail/eva/sky/worksite';
import type { LightRequest } from '@handrail/eva/sky/worksite-light';
import type { Vector3 } from '@handrail/quantity/vector';
import { circularOrbit } from './circular-orbit.ts';

/** A small invented station for tests: a core drum, a lattice spine, a radiator, two wings that follow the Sun; 50 places. */
export function inventedStation(): LightRequest {
  const spine: number[] = [];
  for (let bay = 0; bay < 20; bay++) {
    const y = -19 + 2 * bay;
    for (const x of [-1, 1])
      spine.push(...boxTriangles([x, y, -4], [0.1, 2, 0.1]), ...boxTriangles([x, y, -6], [0.1, 2, 0.1]));
    spine.push(...boxTriangles([0, y, -4], [2, 0.1, 0.1]), ...boxTriangles([0, y, -6], [2, 0.1, 0.1]));
  }
  const bodies: ShapeBody[] = [
    { name: 'core', trianglesM: drumTriangles([0, 0, 0], 0, 2.2, 16, 48, 4), joint: null },
    { name: 'lock', trianglesM: drumTriangles([4, 0, 3], 2, 1.2, 3, 24, 1), joint: null },
    { name: 'spine', trianglesM: spine, joint: null },
    { name: 'wing-port', trianglesM: plateTriangles([0, -28, -5], [12, 0, 0], [0, 16, 0], 4), joint: 'wing-port' },
    {
      name: 'wing-starboard',
      trianglesM: plateTriangles([0, 28, -5], [12, 0, 0], [0, 16, 0], 4),
      joint: 'wing-starboard',
    },
    { name: 'radiator', trianglesM: plateTriangles([-4, 0, -12], [0, 8, 0], [0, 0, 10], 4), joint: null },
  ];
  const wing = (name: string, y: number): Joint => ({
    name,
    parent: null,
    pivotM: [0, y, -5],
    axis: [0, 1, 0],
    motion: { kind: 'tracks-sun', facing: [0, 0, -1], biasRad: 0, limitsRad: null },
  });
  const worksites = Array.from({ length: 50 }, (_, k): Worksite => {
    const angle = 2.399963 * k;
    const normal: Vector3 = [0, Math.cos(angle), Math.sin(angle)];
    const onSpine = k % 2 === 1;
    return {
      name: `place ${k + 1}`,
      positionM: onSpine
        ? [Math.cos(angle) * 1.3, -19 + 38 * (k / 49), -5 + Math.sin(angle) * 1.3]
        : [-7.5 + (15 * k) / 49, 2.25 * normal[1], 2.25 * normal[2]],
      normal: onSpine ? null : normal,
      joint: null,
      clearanceM: 0.1,
    };
  });
  const startUtcMs = Date.UTC(2031, 8, 14, 6);
  return {
    orbit: { ...circularOrbit(415, 44, 57, startUtcMs - 21_600_000), name: 'Fulmar Station' },
    attitude: { kind: 'local-vertical', lvlhFromBody: [1, 0, 0, 0] },
    shape: { bodies, joints: [wing('wing-port', -20), wing('wing-starboard', 20)] },
    worksites,
    startUtcMs,
    endUtcMs: startUtcMs + 86_400_000,
    stepS: 10,
  };
}
