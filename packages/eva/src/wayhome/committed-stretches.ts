/**
 * Stretches of one person's EVA from which no safe stop is in reach: something open that nothing closes from there, a clock that
 * cannot be stopped, a plate without a way down if the arm stops, a step that the text calls no safe stop. The other person counts
 * in every segment in which they can be meanwhile.
 *
 * A stretch whose only cause is a clock threatens the hardware, not the crew: they can still go home.
 */
import type { EvaProgress } from './eva-progress.ts';
import type { Solve } from './solve-state.ts';
import type { ProgressPair } from './coexisting-pairs.ts';
import type { Segment } from './segments.ts';
import { type Blocked, type BlockedCause, blockedWords, type WayHome } from './way-home-plan.ts';
import type { ArmIs } from './way-home-state.ts';
import { worstOfPair } from './worst-over-pairs.ts';

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
  /** At its longest. */
  readonly longestS: number;
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
  solve: Solve,
  arms: readonly ArmIs[],
): readonly CommittedStretch[] {
  const stintsOf = new Map(progress.eva.stints.map((planned) => [planned.stint, planned.assigned] as const));
  const besides = besidesOf(pairs);
  const waysFrom = (segment: Segment, arm: ArmIs): WayHome[] =>
    (besides.get(segment) ?? []).flatMap((now) =>
      worstOfPair(now, 'terminate', solve, [arm], (one) => progress.turnsAtEnd(one)),
    );
  const homeAfterS = (after: Segment | undefined): number | null => {
    if (after === undefined) return null;
    const ways = arms.flatMap((arm) => waysFrom(after, arm));
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
      const alive = waysFrom(segment, 'alive').flatMap((way) => way.blocked.filter(own));
      const dead =
        arms.includes('dead') && segment.onArm !== null
          ? waysFrom(segment, 'dead').flatMap((way) => way.blocked.filter(own))
          : [];
      const blocked = [...alive, ...dead];
      if (blocked.length === 0) continue;
      const last = found.at(-1);
      if (last !== undefined && last.endS >= segment.startS - 1e-6) {
        last.endS = segment.endS;
        last.blocked.push(...blocked);
        last.ifArmStops = last.ifArmStops && alive.length === 0;
      } else {
        const { startS, endS, stint: entry } = segment;
        found.push({ person, startS, endS, entry, ifArmStops: alive.length === 0, blocked });
      }
    }
    return found.map(({ blocked, ...stretch }) => {
      const inIt = segments.filter(({ startS, endS }) => startS < stretch.endS && stretch.startS < endS);
      const after = segments.find(({ startS, endS }) => startS >= stretch.endS - 1e-6 && endS > startS);
      // A wait within it lasts as long as it does as planned, or longer where the other is late: the wait is theirs to count.
      const longestS = inIt.reduce((sum, one) => sum + Math.max(one.mostS, one.endS - one.startS), 0);
      const causes = [...new Set(blocked.map((one) => one.cause))];
      return { ...stretch, causes, why: whyOf(blocked), longestS, homeAfterS: homeAfterS(after) };
    });
  });
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

/** For each segment of one person, those in which both are meanwhile. */
function besidesOf(pairs: readonly ProgressPair[]): ReadonlyMap<Segment, readonly (readonly Segment[])[]> {
  const found = new Map<Segment, (readonly Segment[])[]>();
  const add = (segment: Segment, now: readonly Segment[]): void => {
    const list = found.get(segment);
    if (list === undefined) found.set(segment, [now]);
    else list.push(now);
  };
  for (const { a, b } of pairs) {
    const now = a === b ? [a] : [a, b];
    for (const segment of now) add(segment, now);
  }
  return found;
}
