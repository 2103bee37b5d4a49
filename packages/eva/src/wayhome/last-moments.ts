/**
 * The last moment to start each stint: the latest instant from which, over the whole of its longest course, everybody is home by
 * the limit from wherever they can be. Null where the way home is not known somewhere in it, or no limit is stated.
 */
import type { EvaProgress } from './eva-progress.ts';
import type { Segment } from './segments.ts';
import type { WorstAt } from './worst-over-pairs.ts';

export interface LastMoment {
  readonly stint: string;
  readonly plannedS: number;
  readonly latestS: number | null;
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
  return progress.eva.stints.map((planned): LastMoment => {
    const base = { stint: planned.stint, plannedS: planned.startS };
    if (limit === null) return { ...base, latestS: null, why: 'no limit is stated' };
    const parts = progress.segments.flat().filter((segment) => segment.stint === planned.stint);
    if (parts.length === 0) return { ...base, latestS: null, why: 'nobody outside takes part' };
    const offsets = new Map(offsetsOf(parts));
    let latestS = Number.POSITIVE_INFINITY;
    for (const segment of parts) {
      for (const [at, fromS] of changes.slice(0, -1).entries()) {
        if (fromS >= segment.endS || (changes[at + 1] as number) <= segment.startS) continue;
        const here = (worst[at] as WorstAt).byMode.terminate;
        if (here.totalS === null) {
          return { ...base, latestS: null, why: here.unknown[0] ?? here.blocked[0]?.words ?? 'no way home is known' };
        }
        latestS = Math.min(latestS, limit.petS - (offsets.get(segment) ?? 0) - here.totalS);
      }
    }
    return { ...base, latestS, why: null };
  });

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
