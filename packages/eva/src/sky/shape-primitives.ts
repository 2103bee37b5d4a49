import type { Vector3 } from '@handrail/quantity/vector';
import { inRange } from './in-range.ts';
import { add, scale } from './vector-algebra.ts';

/** Triangles of simple solids for a vehicle that has no drawing: nine numbers a triangle, m, body axes. */

/** A flat rectangle about its centre; `alongM` and `acrossM` are its full sides. `cells` squares a side. */
export function plateTriangles(centerM: Vector3, alongM: Vector3, acrossM: Vector3, cells = 1): number[] {
  inRange('the cells of a plate', cells, 1, 500, '');
  const at = (i: number, j: number): Vector3 =>
    add(centerM, add(scale(alongM, i / cells - 0.5), scale(acrossM, j / cells - 0.5)));
  const triangles: number[] = [];
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < cells; j++) {
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i, j + 1), at(i + 1, j + 1)];
      triangles.push(...a, ...b, ...c, ...b, ...d, ...c);
    }
  }
  return triangles;
}

/** A box about its centre, its edges along body axes. */
export function boxTriangles(centerM: Vector3, sizeM: Vector3): number[] {
  const [x, y, z]: readonly Vector3[] = [
    [sizeM[0], 0, 0],
    [0, sizeM[1], 0],
    [0, 0, sizeM[2]],
  ];
  const sides = [
    [x, y, z],
    [y, z, x],
    [z, x, y],
  ] as readonly (readonly [Vector3, Vector3, Vector3])[];
  return sides.flatMap(([u, v, out]) =>
    [0.5, -0.5].flatMap((side) => plateTriangles(add(centerM, scale(out, side)), u, v)),
  );
}

/** A closed drum about its centre, its axis along body axis 0, 1 or 2; its corners lie on the radius, so it is a little slimmer. */
export function drumTriangles(
  centerM: Vector3,
  axis: 0 | 1 | 2,
  radiusM: number,
  lengthM: number,
  sides: number,
  rings = 1,
): number[] {
  inRange('the sides of a drum', sides, 3, 1000, '');
  inRange('the rings of a drum', rings, 1, 1000, '');
  const at = (ring: number, side: number, radius: number): Vector3 => {
    const angle = (2 * Math.PI * side) / sides;
    const p: [number, number, number] = [0, 0, 0];
    p[axis] = (ring / rings - 0.5) * lengthM;
    p[(axis + 1) % 3] = radius * Math.cos(angle);
    p[(axis + 2) % 3] = radius * Math.sin(angle);
    return add(p, centerM);
  };
  const triangles: number[] = [];
  for (let side = 0; side < sides; side++) {
    for (let ring = 0; ring < rings; ring++) {
      const [a, b] = [at(ring, side, radiusM), at(ring, side + 1, radiusM)];
      const [c, d] = [at(ring + 1, side, radiusM), at(ring + 1, side + 1, radiusM)];
      triangles.push(...a, ...b, ...c, ...b, ...d, ...c);
    }
    for (const ring of [0, rings])
      triangles.push(...at(ring, 0, 0), ...at(ring, side, radiusM), ...at(ring, side + 1, radiusM));
  }
  return triangles;
}
