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
    const offsets = new Map(offsetsOf(parts));
    return { stint, plannedS, terminate: latest(parts, offsets, 'terminate'), abort: latest(parts, offsets, 'abort') };
  });

  function latest(
    parts: readonly Segment[],
    offsets: ReadonlyMap<Segment, number>,
    mode: 'terminate' | 'abort',
  ): Latest {
    const none = (why: string): Latest => ({ latestS: null, atMostS: null, why });
    if (limit === null) return none('no limit is stated');
    if (parts.length === 0) return none('nobody outside takes part');
    let atMostS: number | null = null;
    let why: string | null = null;
    for (const segment of parts) {
      for (const [at, fromS] of changes.slice(0, -1).entries()) {
        if (fromS >= segment.endS || (changes[at + 1] as number) <= segment.startS) continue;
        const here = (worst[at] as WorstAt).byMode[mode];
        if (!isWhole(here)) why ??= here.unknown[0] ?? here.blocked[0]?.words ?? null;
        if (here.totalS === null) continue;
        const lastS = limit.petS - (offsets.get(segment) ?? 0) - here.totalS;
        atMostS = Math.min(atMostS ?? Number.POSITIVE_INFINITY, lastS);
      }
    }
    if (atMostS === null) why ??= 'no way home is known';
    return { latestS: why === null ? atMostS : null, atMostS, why };
  }

  /** Longest time from the start of the stint to the end of each part of it. */
  function offsetsOf(parts: readonly Segment[]): (readonly [Segment, number])[] {
    return parts.map((segment) => {
      const before = parts.filter((other) => other.person === segment.person && other.index <= segment.index);
      const first = Math.min(...parts.map((other) => other.startS));
      const own = before.reduce((sum, other) => sum + other.mostS, 0);
      // Somebody who joins later: what came before them, at its longest, is in the other's parts.
      const lateS = Math.max(0, Math.min(...before.map((other) => other.startS)) - first);
      const ratio = segment.endS > segment.startS ? segment.mostS / (segment.endS - segment.startS) : 1;
      return [segment, own + lateS * Math.max(1, ratio)] as const;
    });
  }
}
