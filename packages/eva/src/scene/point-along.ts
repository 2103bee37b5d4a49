import { distance, type Vector3 } from '@handrail/quantity/vector';

/** The point that divides a way of straight pieces, by length: share 0 is its start, 1 its end. The way has at least one point. */
export function pointAlong(way: readonly Vector3[], share: number): Vector3 {
  const lengths = way.slice(1).map((point, index) => distance(way[index] as Vector3, point));
  let left = Math.min(1, Math.max(0, share)) * lengths.reduce((sum, length) => sum + length, 0);
  for (const [index, length] of lengths.entries()) {
    if (left <= length && length > 0) return between(way[index] as Vector3, way[index + 1] as Vector3, left / length);
    left -= length;
  }
  return way.at(-1) as Vector3;
}

function between(a: Vector3, b: Vector3, share: number): Vector3 {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
}
