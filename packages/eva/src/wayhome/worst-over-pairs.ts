/** The worst way home over all pairs of progress that can stand side by side, for each stretch between two planned changes. */
import type { EvaProgress } from './eva-progress.ts';
import type { ProgressPair } from './progress-network.ts';
import type { Segment } from './segments.ts';
import type { Solve } from './solve-state.ts';
import type { WayHome } from './way-home-plan.ts';
import { type ArmIs, type Mode, MODES } from './way-home-state.ts';

export interface Worst {
  /** Longest of those that are known; null: none is. */
  readonly totalS: number | null;
  readonly way: WayHome | null;
  /** Longest until anybody is at the hatch, over the same ways; null: none is known. */
  readonly atHatchS: number | null;
  /** The one of them in which somebody is towed for the longest; null: nobody is. */
  readonly tow: { readonly towS: number; readonly way: WayHome } | null;
  /** In the stretch somebody may stand where nothing is known, or where no safe stop is in reach. */
  readonly unknown: readonly string[];
  readonly blocked: WayHome['blocked'];
  /** Names of the two segments. */
  readonly pair: readonly Segment[];
}
export interface WorstAt {
  readonly byMode: Readonly<Record<Mode, Worst>>;
}

/** Whether the way home of every pair is known: only then is the longest of those that are known the longest of all. */
export function isWhole({ unknown, blocked }: Pick<Worst, 'unknown' | 'blocked'>): boolean {
  return unknown.length === 0 && blocked.length === 0;
}

const NONE: Worst = { totalS: null, way: null, atHatchS: null, tow: null, unknown: [], blocked: [], pair: [] };

/** @param changes planned instants, sorted: stretch i runs from changes[i] to changes[i + 1] */
export function worstOverPairs(
  pairs: readonly ProgressPair[],
  changes: readonly number[],
  waysFrom: (pair: ProgressPair) => WaysOfPair,
): readonly WorstAt[] {
  const worst = changes.slice(0, -1).map((): Record<Mode, Worst> => ({ terminate: NONE, abort: NONE, assist: NONE }));
  for (const pair of pairs) {
    const [from, to] = stretches(changes, pair.fromS, pair.toS);
    if (from >= to) continue;
    const ways = waysFrom(pair);
    for (const mode of MODES) {
      const here = worstOf(ways[mode], segmentsOfPair(pair));
      for (let at = from; at < to; at++) {
        const row = worst[at] as Record<Mode, Worst>;
        row[mode] = longer(row[mode], here);
      }
    }
  }
  return worst.map((byMode) => ({ byMode }));
}

export function segmentsOfPair({ a, b }: ProgressPair): readonly Segment[] {
  return a === b ? [a] : [a, b];
}

/** All that can be while people are in these segments, each once. */
export type WaysOfPair = Readonly<Record<Mode, readonly WayHome[]>>;

/**
 * Each step taken as not begun and as done; what others do as done or not where it may be either; the arm as it may be.
 * @param arms whether the arm may also stop
 */
export function waysOfPair(
  progress: EvaProgress,
  now: readonly Segment[],
  solve: Solve,
  arms: readonly ArmIs[],
): WaysOfPair {
  const choices = now.map((segment) =>
    segment.kind === 'work' && progress.turnsAtEnd(segment) ? [segment.index, segment.index + 1] : [segment.index],
  );
  const allFinished = choices.reduce<number[][]>(
    (rows, list) => rows.flatMap((row) => list.map((one) => [...row, one])),
    [[]],
  );
  const cases = now.some((segment) => segment.onArm !== null) ? arms : arms.slice(0, 1);
  const found = { terminate: new Set<WayHome>(), abort: new Set<WayHome>(), assist: new Set<WayHome>() };
  for (const when of progress.anywhere(now)) {
    for (const finished of allFinished) {
      for (const mode of MODES) {
        for (const arm of cases) found[mode].add(solve(now, finished, when, { mode, arm, basis: 'high' }));
      }
    }
  }
  return { terminate: [...found.terminate], abort: [...found.abort], assist: [...found.assist] };
}

/** Of the ways from one pair. */
function worstOf(found: readonly WayHome[], pair: readonly Segment[]): Worst {
  let { totalS, way, atHatchS, tow, unknown, blocked } = NONE;
  for (const one of found) {
    for (const person of one.people) if (atHatchS === null || person.atHatchS > atHatchS) atHatchS = person.atHatchS;
    if (one.towS !== null && (tow === null || one.towS > tow.towS)) tow = { towS: one.towS, way: one };
    if (one.totalS === null) {
      if (unknown.length === 0) unknown = one.unknown;
      if (blocked.length === 0) blocked = one.blocked;
    } else if (totalS === null || one.totalS > totalS) [totalS, way] = [one.totalS, one];
  }
  return { totalS, way, atHatchS, tow, unknown, blocked, pair };
}

/** The longer of each; what stands already where the other is not. */
function longer(before: Worst, here: Worst): Worst {
  const isLonger = here.totalS !== null && (before.totalS === null || here.totalS > before.totalS);
  const isFurther = here.atHatchS !== null && (before.atHatchS === null || here.atHatchS > before.atHatchS);
  const isTowed = here.tow !== null && (before.tow === null || here.tow.towS > before.tow.towS);
  const isUnknown = before.unknown.length === 0 && here.unknown.length > 0;
  const isBlocked = before.blocked.length === 0 && here.blocked.length > 0;
  if (!(isLonger || isFurther || isTowed || isUnknown || isBlocked)) return before;
  const { totalS, way, pair } = isLonger ? here : before;
  return {
    totalS,
    way,
    pair,
    atHatchS: isFurther ? here.atHatchS : before.atHatchS,
    tow: isTowed ? here.tow : before.tow,
    unknown: isUnknown ? here.unknown : before.unknown,
    blocked: isBlocked ? here.blocked : before.blocked,
  };
}

/** Indices [from, to) of the stretches that meet [fromS, toS). */
function stretches(changes: readonly number[], fromS: number, toS: number): readonly [number, number] {
  let from = 0;
  while (from < changes.length - 1 && (changes[from + 1] as number) <= fromS) from++;
  let to = from;
  while (to < changes.length - 1 && (changes[to] as number) < toS) to++;
  return [from, to];
}
