import { Fault } from '@handrail/quantity/fault';

/** Half-open: the start belongs to it, the end does not. UTC milliseconds. */
export type Interval = readonly [startUtcMs: number, endUtcMs: number];

/**
 * Disjoint, sorted, half-open intervals, none empty, no two touching. `windowSet` makes one of any list; the operations
 * below take and give such lists and never change what they are given.
 */
export type Intervals = readonly Interval[];

/** Sorts, joins what overlaps or touches, drops what is empty. @throws Fault `sky/bad-interval` for a reversed or non-finite one */
export function windowSet(intervals: Iterable<Interval>): Intervals {
  const sorted = [...intervals].toSorted((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  for (const [start, end] of sorted) {
    if (!Number.isFinite(start) || !Number.isFinite(end) || end < start) {
      throw new Fault(
        'sky/bad-interval',
        `an interval must run from an instant to a later one; found ${start} to ${end} UTC ms`,
        {
          values: { start, end },
        },
      );
    }
    if (start === end) continue;
    const last = joined.at(-1);
    if (last !== undefined && start <= last[1]) last[1] = Math.max(last[1], end);
    else joined.push([start, end]);
  }
  return joined;
}

export function union(...sets: readonly Intervals[]): Intervals {
  return windowSet(sets.flat());
}

export function intersection(a: Intervals, b: Intervals): Intervals {
  const common: Interval[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const [p, q] = [a[i] as Interval, b[j] as Interval];
    const start = Math.max(p[0], q[0]);
    const end = Math.min(p[1], q[1]);
    if (start < end) common.push([start, end]);
    if (p[1] < q[1]) i++;
    else j++;
  }
  return common;
}

/** What of [start, end) the set leaves free. */
export function complement(set: Intervals, startUtcMs: number, endUtcMs: number): Intervals {
  const free: Interval[] = [];
  let from = startUtcMs;
  for (const [start, end] of set) {
    if (end <= startUtcMs) continue;
    if (start >= endUtcMs) break;
    if (start > from) free.push([from, start]);
    from = Math.max(from, end);
  }
  if (from < endUtcMs) free.push([from, endUtcMs]);
  return free;
}

export function difference(a: Intervals, b: Intervals): Intervals {
  const first = a[0];
  const last = a.at(-1);
  if (first === undefined || last === undefined) return [];
  return intersection(a, complement(b, first[0], last[1]));
}

/** Moves both ends outward by `padS` (inward when negative); what then meets is joined, what vanishes is dropped. */
export function padded(set: Intervals, padS: number): Intervals {
  const ms = padS * 1000;
  return windowSet(set.map(([start, end]): Interval => [start - ms, end + ms]).filter(([start, end]) => end > start));
}

/** Only the intervals that last at least so long. */
export function lastingAtLeast(set: Intervals, minimumS: number): Intervals {
  return set.filter(([start, end]) => end - start >= minimumS * 1000);
}

/** Summed length, s. */
export function totalS(set: Intervals): number {
  return set.reduce((sum, [start, end]) => sum + (end - start), 0) / 1000;
}

export function contains(set: Intervals, utcMs: number): boolean {
  let low = 0;
  let high = set.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((set[middle] as Interval)[1] <= utcMs) low = middle + 1;
    else high = middle;
  }
  const found = set[low];
  return found !== undefined && found[0] <= utcMs;
}
