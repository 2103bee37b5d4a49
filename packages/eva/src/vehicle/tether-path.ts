/** How a safety tether lies, and where two of them meet. */
import { distance } from '@handrail/quantity/vector';
import type { Rail, Vehicle } from '../campaign/campaign.ts';

export interface TetherPath {
  readonly anchor: string;
  /** Places of anchor, fairleads, person. */
  readonly points: readonly string[];
  /** Places it was led along, from the anchor outward. */
  readonly along: readonly string[];
  readonly rails: readonly Rail[];
  /** Paid out, metres. */
  readonly reelM: number;
}

export type TetherMeeting =
  /** Both lie along the same rails: they may wind round each other. */
  | { readonly kind: 'run together'; readonly rails: readonly string[] }
  /** Both pass through a place, coming and going by different rails. */
  | { readonly kind: 'cross'; readonly place: string }
  /** Straight lines between their points pass near each other where neither place nor rail is shared; needs positions. */
  | { readonly kind: 'pass near'; readonly distanceM: number };

/** Two taut lines that come closer than this may foul each other. Common practice: an arm's length. */
export const NEAR_M = 0.7;

/**
 * Where two tethers meet. Along rails it needs no positions; where both have positions of all points, lines that pass near
 * each other away from shared places are told too. The place of a shared anchor does not count.
 */
export function tetherMeetings(a: TetherPath, b: TetherPath, vehicle: Vehicle): readonly TetherMeeting[] {
  const meetings: TetherMeeting[] = [];
  const shared = a.rails.filter((rail) => b.rails.some((other) => other.id === rail.id)).map((rail) => rail.id);
  if (shared.length > 0) meetings.push({ kind: 'run together', rails: shared });
  const sharedPlaces = a.along.filter((place) => b.along.includes(place));
  for (const place of sharedPlaces) {
    const railsThere = (path: TetherPath): string[] =>
      path.rails.filter((rail) => rail.from === place || rail.to === place).map((rail) => rail.id);
    const ofA = railsThere(a);
    const ofB = railsThere(b);
    if (ofA.length === 2 && ofB.length === 2 && !ofA.some((rail) => ofB.includes(rail))) {
      meetings.push({ kind: 'cross', place });
    }
  }
  if (sharedPlaces.length === 0) {
    const distanceM = nearest(a, b, vehicle);
    if (distanceM !== null && distanceM < NEAR_M) meetings.push({ kind: 'pass near', distanceM });
  }
  return meetings;
}

/** Rails under the tether that hold only while something stays as it is: a joint that may turn. */
export function railsThatMayTurn(path: TetherPath): readonly Rail[] {
  return path.rails.filter((rail) => rail.openWhile.length > 0);
}

type Point = readonly [number, number, number];

function nearest(a: TetherPath, b: TetherPath, vehicle: Vehicle): number | null {
  const positions = new Map(vehicle.places.map((place) => [place.id, place.positionM]));
  const line = (path: TetherPath): readonly (Point | null)[] =>
    path.points.map((point) => positions.get(point) ?? null);
  const first = line(a);
  const second = line(b);
  if (first.includes(null) || second.includes(null)) return null;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < first.length; i++) {
    for (let j = 0; j + 1 < second.length; j++) {
      least = Math.min(
        least,
        segmentDistance(first[i] as Point, first[i + 1] as Point, second[j] as Point, second[j + 1] as Point),
      );
    }
  }
  return Number.isFinite(least) ? least : null;
}

/**
 * Least distance between two straight pieces. The squared distance is convex in both parameters, so that the least is inside,
 * where both derivatives vanish, or on an edge, where one end is fixed.
 */
export function segmentDistance(p: Point, q: Point, r: Point, s: Point): number {
  const candidates = [
    pointToSegment(p, r, s),
    pointToSegment(q, r, s),
    pointToSegment(r, p, q),
    pointToSegment(s, p, q),
  ];
  const u = minus(q, p);
  const v = minus(s, r);
  const w = minus(p, r);
  const [a, b, c, d, e] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const determinant = a * c - b * b;
  if (determinant > 1e-12 * a * c) {
    const t = (b * e - c * d) / determinant;
    const k = (a * e - b * d) / determinant;
    if (t >= 0 && t <= 1 && k >= 0 && k <= 1) candidates.push(distance(along(p, u, t), along(r, v, k)));
  }
  return Math.min(...candidates);
}

function pointToSegment(point: Point, from: Point, to: Point): number {
  const direction = minus(to, from);
  const square = dot(direction, direction);
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(point, from), direction) / square));
  return distance(point, along(from, direction, t));
}
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (from: Point, d: Point, t: number): Point => [from[0] + t * d[0], from[1] + t * d[1], from[2] + t * d[2]];
