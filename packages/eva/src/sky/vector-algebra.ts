import { norm, type Vector3 } from '@handrail/quantity/vector';

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function add(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function scale(a: Vector3, factor: number): Vector3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function unit(a: Vector3): Vector3 {
  return scale(a, 1 / norm(a));
}

/** Angle between two directions, rad, 0 to π; by atan2, so that it stays exact near 0 and π where acos does not. */
export function angleBetween(a: Vector3, b: Vector3): number {
  return Math.atan2(norm(cross(a, b)), dot(a, b));
}
