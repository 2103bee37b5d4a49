import type { Vector3 } from '@handrail/quantity/vector';
import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 as LibraryVector } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { inRange } from './in-range.ts';
import { jointPoses, type Pose, badShape, type VehicleShape } from './vehicle-shape.ts';

/** Casts rays at the vehicle with its joints where the Sun has turned them. */
export interface RayCaster {
  /** The joints' names by index; 0 is the vehicle itself. */
  readonly carriers: readonly (string | null)[];
  readonly posesAt: (sunBody: Vector3) => readonly Pose[];
  /**
   * Index of a body that the ray meets farther out than `beyondM`, or −1. Which of several bodies is named is not defined.
   * `hint` is the last triangle found from the same place; a ray that still meets it needs no search.
   */
  readonly blockedBy: (
    fromM: Vector3,
    direction: Vector3,
    poses: readonly Pose[],
    beyondM: number,
    hint: Hint,
  ) => number;
  readonly bodyNames: readonly string[];
}

/** Memory of one place from one ray to the next. */
export interface Hint {
  group: number;
  triangle: number;
}

export function noHint(): Hint {
  return { group: -1, triangle: -1 };
}

interface Group {
  readonly carrier: number;
  readonly tree: MeshBVH;
  readonly positionsM: Float32Array;
  /** Body of each triangle. */
  readonly owners: Uint16Array;
}

/** Most triangles that a shape may have. */
const MAX_TRIANGLES = 2_000_000;

/**
 * One bounding-volume hierarchy for each joint and one for the fixed rest, so that a turning joint moves the ray and not the
 * triangles. Positions are single precision: 1 µm at 10 m from the origin of body axes.
 * @throws Fault `sky/bad-shape` with the body's name, `sky/out-of-range`
 * @checked tests/reference/sky/own-shadow.test.ts against the shadow of a sphere and of a plate, and a search without hierarchy
 */
export function rayCaster(shape: VehicleShape): RayCaster {
  const { names, posesAt } = jointPoses(shape.joints);
  const groups: Group[] = [];
  const total = shape.bodies.reduce((sum, body) => sum + body.trianglesM.length / 9, 0);
  inRange('the number of triangles', total, 0, MAX_TRIANGLES, '');
  inRange('the number of bodies', shape.bodies.length, 0, 65_535, '');
  for (const body of shape.bodies) {
    if (body.trianglesM.length % 9 !== 0) {
      throw badShape(`body ${body.name} has ${body.trianglesM.length} numbers; a triangle is nine`, {
        body: body.name,
      });
    }
    if (!names.includes(body.joint))
      throw badShape(`body ${body.name} hangs on "${body.joint}", which is not a joint`, { body: body.name });
    for (let k = 0; k < body.trianglesM.length; k++) {
      const metres = body.trianglesM[k] as number;
      if (!(Math.abs(metres) <= 10_000))
        throw badShape(
          `body ${body.name}, triangle ${Math.floor(k / 9) + 1}: ${metres} m is no coordinate within 10 km`,
          { body: body.name },
        );
    }
  }
  for (const [carrier, joint] of names.entries()) {
    const carried = shape.bodies
      .map((body, index) => ({ body, index }))
      .filter(({ body }) => body.joint === joint && body.trianglesM.length > 0);
    if (carried.length === 0) continue;
    const length = carried.reduce((sum, { body }) => sum + body.trianglesM.length, 0);
    const positionsM = new Float32Array(length);
    const owners = new Uint16Array(length / 9);
    let at = 0;
    for (const { body, index } of carried) {
      positionsM.set(body.trianglesM, at);
      owners.fill(index, at / 9, (at + body.trianglesM.length) / 9);
      at += body.trianglesM.length;
    }
    const geometry = new BufferGeometry().setAttribute('position', new BufferAttribute(positionsM, 3));
    // `indirect` keeps our order of triangles, by which we know whose each one is.
    groups.push({ carrier, tree: new MeshBVH(geometry, { indirect: true }), positionsM, owners });
  }
  const ray = new Ray(new LibraryVector(), new LibraryVector());
  // All scratch, so that two hundred thousand rays make no garbage.
  const o: [number, number, number] = [0, 0, 0];
  const d: [number, number, number] = [0, 0, 0];
  const intoGroup = (pose: Pose, from: Vector3, direction: Vector3): void => {
    const m = pose.turn;
    const x = from[0] - pose.shiftM[0];
    const y = from[1] - pose.shiftM[1];
    const z = from[2] - pose.shiftM[2];
    for (let c = 0; c < 3; c++) {
      const [p, q, r] = [m[c] as number, m[c + 3] as number, m[c + 6] as number];
      o[c] = p * x + q * y + r * z;
      d[c] = p * direction[0] + q * direction[1] + r * direction[2];
    }
  };
  return {
    carriers: names,
    posesAt,
    bodyNames: shape.bodies.map((body) => body.name),
    blockedBy: (from, direction, poses, beyondM, hint) => {
      const known = groups[hint.group];
      if (known !== undefined) {
        intoGroup(poses[known.carrier] as Pose, from, direction);
        if (meetsTriangle(known.positionsM, hint.triangle, o, d, beyondM)) return known.owners[hint.triangle] as number;
      }
      for (const [index, group] of groups.entries()) {
        intoGroup(poses[group.carrier] as Pose, from, direction);
        ray.origin.set(o[0], o[1], o[2]);
        ray.direction.set(d[0], d[1], d[2]);
        const hit = group.tree.raycastFirst(ray, DoubleSide, beyondM);
        if (hit !== null) {
          hint.group = index;
          hint.triangle = hit.faceIndex;
          return group.owners[hit.faceIndex] as number;
        }
      }
      return -1;
    },
  };
}

/**
 * Does the ray meet the triangle farther out than `beyondM`?
 * @source [MOLLER1997] T. Möller, B. Trumbore, Journal of Graphics Tools 2 (1997) 21-28
 */
export function meetsTriangle(
  p: ArrayLike<number>,
  triangle: number,
  o: Vector3,
  d: Vector3,
  beyondM: number,
): boolean {
  const k = triangle * 9;
  const [ax, ay, az] = [p[k] as number, p[k + 1] as number, p[k + 2] as number];
  const [e1x, e1y, e1z] = [(p[k + 3] as number) - ax, (p[k + 4] as number) - ay, (p[k + 5] as number) - az];
  const [e2x, e2y, e2z] = [(p[k + 6] as number) - ax, (p[k + 7] as number) - ay, (p[k + 8] as number) - az];
  const px = d[1] * e2z - d[2] * e2y;
  const py = d[2] * e2x - d[0] * e2z;
  const pz = d[0] * e2y - d[1] * e2x;
  const determinant = e1x * px + e1y * py + e1z * pz;
  if (Math.abs(determinant) < 1e-14) return false;
  const tx = o[0] - ax;
  const ty = o[1] - ay;
  const tz = o[2] - az;
  const u = (tx * px + ty * py + tz * pz) / determinant;
  if (u < 0 || u > 1) return false;
  const qx = ty * e1z - tz * e1y;
  const qy = tz * e1x - tx * e1z;
  const qz = tx * e1y - ty * e1x;
  const v = (d[0] * qx + d[1] * qy + d[2] * qz) / determinant;
  if (v < 0 || u + v > 1) return false;
  return (e2x * qx + e2y * qy + e2z * qz) / determinant > beyondM;
}
