/**
 * The last moment to start each stint: the latest instant from which, over the whole of its longest course, everybody is home by
 * the limit from wherever they can be. Where some pair of progress in it has no way home that is known, the moment cannot be told;
 * the others still say from when on it is too late for certain.
 */
import type { EvaProgress } from './eva-progress.ts';
import type { Segment } from './segments.ts';
import { isWhole, type WorstAt } from './worst-over-pairs.ts';

export interface LastMoment {
  readonly stint: string;
  readonly plannedS: number;
  /** With all closed that the horizon demands: what the hardware and the crew have. */
  readonly terminate: Latest;
  /** With only that closed which may never be left: what the crew has. */
  readonly abort: Latest;
}
export interface Latest {
  /** null: it cannot be told. */
  readonly latestS: number | null;
  /** After this it is too late, whatever the pairs are that are not known; null: not even that can be told. */
  readonly atMostS: number | null;
  /** Why it is not known; null: it is. */
  readonly why: string | null;
}

/** @param worst stretch i of `changes`, the planned instants of both people, sorted */
export function lastMoments(
  progress: EvaProgress,
  changes: readonly number[],
  worst: readonly WorstAt[],
  limit: { readonly petS: number } | null,
): readonly LastMoment[] {
  return progress.eva.stints.map(({ stint, startS: plannedS }): LastMoment => {
    const parts = progress.segments.flat().filter((segment) => segment.stint === stint);
    return { stint, plannedS, terminate: latest(parts, 'terminate'), abort: latest(parts, 'abort') };
  });

  function latest(parts: readonly Segment[], mode: 'terminate' | 'abort'): Latest {
    const none = (why: string): Latest => ({ latestS: null, atMostS: null, why });
    if (limit === null) return none('no limit is stated');
    if (parts.length === 0) return none('nobody outside takes part');
    let atMostS: number | null = null;
    let why: string | null = null;
    const [first] = parts.toSorted((one, two) => one.startS - two.startS);
    for (const segment of parts) {
      // Longest from the start of the stint to the end of this part of it, waits for the other included.
      const courseS = progress.network.mostFromS(first ?? segment, segment);
      if (courseS === Number.POSITIVE_INFINITY) return none('nothing bounds how long it takes');
      for (const [at, fromS] of changes.slice(0, -1).entries()) {
        if (fromS >= segment.endS || (changes[at + 1] as number) <= segment.startS) continue;
        const here = (worst[at] as WorstAt).byMode[mode];
        if (!isWhole(here)) why ??= here.unknown[0] ?? here.blocked[0]?.words ?? null;
        if (here.totalS === null) continue;
        const lastS = limit.petS - courseS - here.totalS;
        atMostS = Math.min(atMostS ?? Number.POSITIVE_INFINITY, lastS);
      }
    }
    if (atMostS === null) why ??= 'no way home is known';
    return { latestS: why === null ? atMostS : null, atMostS, why };
  }
}
