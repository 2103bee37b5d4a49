/**
 * Stretches of one person's EVA from which no safe stop is in reach: something open that nothing closes from there, a clock that
 * cannot be stopped, a plate without a way down if the arm stops, a step that the text calls no safe stop. The other person counts
 * in every segment in which they can be meanwhile.
 *
 * A stretch whose only cause is a clock threatens the hardware, not the crew: they can still go home.
 */
import type { EvaProgress } from './eva-progress.ts';
import type { ProgressPair } from './progress-network.ts';
import type { Segment } from './segments.ts';
import { type Blocked, type BlockedCause, blockedWords, type WayHome } from './way-home-plan.ts';
import { segmentsOfPair } from './ways-of-pair.ts';
import type { WaysOfPair } from './worst-of-ways.ts';

export interface CommittedStretch {
  readonly person: string;
  readonly startS: number;
  readonly endS: number;
  readonly causes: readonly BlockedCause[];
  /** In words, each once. */
  readonly why: readonly string[];
  /** Stint in which it begins; null: on the way. */
  readonly entry: string | null;
  /** Only while the arm does not move. */
  readonly ifArmStops: boolean;
  /** At its longest; null: nothing bounds it. */
  readonly longestS: number | null;
  /** The longest way home (terminate) right after it, wherever the other can be then; null: one of them is unknown or committed. */
  readonly homeAfterS: number | null;
}

interface Found {
  readonly person: string;
  readonly startS: number;
  endS: number;
  readonly entry: string | null;
  ifArmStops: boolean;
  readonly blocked: Blocked[];
}

export function committedStretches(
  progress: EvaProgress,
  pairs: readonly ProgressPair[],
  waysFrom: (pair: ProgressPair) => WaysOfPair,
): readonly CommittedStretch[] {
  const stintsOf = new Map(progress.eva.stints.map((planned) => [planned.stint, planned.assigned] as const));
  const besides = besidesOf(pairs);
  const waysIn = (segment: Segment): readonly WayHome[] =>
    (besides.get(segment) ?? []).flatMap((pair) => waysFrom(pair).terminate.all);
  const homeAfterS = (after: Segment | undefined): number | null => {
    if (after === undefined) return null;
    const ways = waysIn(after);
    const times = ways.map(({ totalS }) => totalS).filter((totalS) => totalS !== null);
    return times.length < ways.length || times.length === 0 ? null : Math.max(...times);
  };
  return progress.persons.flatMap((person, at) => {
    const found: Found[] = [];
    const own = (cause: Blocked): boolean =>
      cause.by.length === 0 || cause.by.some((by) => by === person || (stintsOf.get(by)?.includes(person) ?? false));
    const segments = progress.segments[at] ?? [];
    for (const segment of segments) {
      if (segment.kind === 'inside' || segment.endS <= segment.startS) continue;
      const ways = waysIn(segment).filter((way) => way.arm === 'alive' || segment.onArm !== null);
      const blocked = ways.flatMap((way) => way.blocked.filter(own));
      const isAlways = ways.some((way) => way.arm === 'alive' && way.blocked.some(own));
      if (blocked.length === 0) continue;
      const last = found.at(-1);
      if (last !== undefined && last.endS >= segment.startS - 1e-6) {
        last.endS = segment.endS;
        last.blocked.push(...blocked);
        last.ifArmStops = last.ifArmStops && !isAlways;
      } else {
        const { startS, endS, stint: entry } = segment;
        found.push({ person, startS, endS, entry, ifArmStops: !isAlways, blocked });
      }
    }
    return found.map(({ blocked, ...stretch }) => {
      const inIt = segments.filter(({ startS, endS }) => startS < stretch.endS && stretch.startS < endS);
      const [first, last] = [inIt[0], inIt.at(-1)];
      const after = segments.find(({ startS, endS }) => startS >= stretch.endS - 1e-6 && endS > startS);
      const mostS =
        first === undefined || last === undefined ? Number.POSITIVE_INFINITY : progress.network.mostFromS(first, last);
      const longestS = Number.isFinite(mostS) ? mostS : null;
      const causes = [...new Set(blocked.map((one) => one.cause))];
      return { ...stretch, causes, why: whyOf(blocked), longestS, homeAfterS: homeAfterS(after) };
    });
  });
}

/**
 * Whether two people can be in these stretches at once, in some execution.
 * @returns the earliest PET at which they can; null: in none
 */
export function sharedFrom(
  pairs: readonly ProgressPair[],
  one: CommittedStretch,
  two: CommittedStretch,
): number | null {
  const isIn = (segment: Segment, { person, startS, endS }: CommittedStretch): boolean =>
    segment.person === person && segment.startS < endS && startS < segment.endS;
  const shared = pairs.filter(({ a, b }) => (isIn(a, one) && isIn(b, two)) || (isIn(a, two) && isIn(b, one)));
  return shared.length === 0 ? null : Math.min(...shared.map(({ fromS }) => fromS));
}

/** Each cause once; of a clock the least that is left of it. */
function whyOf(blocked: readonly Blocked[]): readonly string[] {
  const least = new Map<string, number | null>();
  for (const { words, leftS } of blocked) {
    const before = least.get(words) ?? null;
    least.set(words, before === null || leftS === null ? leftS : Math.min(before, leftS));
  }
  return [...least].map(([words, leftS]) => blockedWords({ words, leftS }));
}

/** The pairs that each segment is in. */
function besidesOf(pairs: readonly ProgressPair[]): ReadonlyMap<Segment, readonly ProgressPair[]> {
  const found = new Map<Segment, ProgressPair[]>();
  for (const pair of pairs) {
    for (const segment of segmentsOfPair(pair)) {
      const list = found.get(segment);
      if (list === undefined) found.set(segment, [pair]);
      else list.push(pair);
    }
  }
  return found;
}
