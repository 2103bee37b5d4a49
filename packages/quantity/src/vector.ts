/** Vectors in three dimensions; the frame and unit stand in the name of the value that holds one. */
export type Vector3 = readonly [number, number, number];

export function subtract(a: Vector3, b: Vector3): Vector3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function norm(a: Vector3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

export function distance(a: Vector3, b: Vector3): number {
  return norm(subtract(a, b));
}
