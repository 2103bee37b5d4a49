/** The worst way home over all pairs of progress that can stand side by side, for each stretch between two planned changes. */
import type { ProgressPair } from './coexisting-pairs.ts';
import type { Segment } from './segments.ts';
import type { Solve } from './solve-state.ts';
import type { WayHome } from './way-home-plan.ts';
import type { ArmIs, Mode } from './way-home-state.ts';

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

/**
 * @param changes planned instants, sorted: stretch i runs from changes[i] to changes[i + 1]
 * @param arms whether the arm may also stop: then the worse of alive and dead counts, where dead has a way at all
 */
export function worstOverPairs(
  people: number,
  pairs: readonly ProgressPair[],
  changes: readonly number[],
  solve: Solve,
  arms: readonly ArmIs[],
  turnsAtEnd: (segment: Segment) => boolean,
): readonly WorstAt[] {
  const worst = changes.slice(0, -1).map((): Record<Mode, Worst> => ({ terminate: NONE, abort: NONE, assist: NONE }));
  for (const pair of pairs) {
    const now = people < 2 ? [pair.a] : [pair.a, pair.b];
    const overlap = stretches(changes, pair.fromS, pair.toS);
    if (overlap[0] >= overlap[1]) continue;
    for (const mode of ['terminate', 'abort', 'assist'] as const) {
      const found = worstOfPair(now, mode, solve, arms, turnsAtEnd);
      for (let at = overlap[0]; at < overlap[1]; at++) {
        const row = worst[at] as Record<Mode, Worst>;
        row[mode] = longer(row[mode], found, now);
      }
    }
  }
  return worst.map((byMode) => ({ byMode }));
}

/** Each step taken as not begun and as done; the arm as it may be. */
export function worstOfPair(
  now: readonly Segment[],
  mode: Mode,
  solve: Solve,
  arms: readonly ArmIs[],
  turnsAtEnd: (segment: Segment) => boolean,
): readonly WayHome[] {
  const choices = now.map((segment) =>
    segment.kind === 'work' && turnsAtEnd(segment) ? [segment.index, segment.index + 1] : [segment.index],
  );
  const progress = choices.reduce<number[][]>(
    (rows, list) => rows.flatMap((row) => list.map((one) => [...row, one])),
    [[]],
  );
  const onArm = now.some((segment) => segment.onArm !== null);
  const cases = onArm ? arms : arms.slice(0, 1);
  const all = progress.flatMap((finished) =>
    cases.map((arm) => solve(now, finished, null, { mode, arm, basis: 'high' })),
  );
  return [...new Set(all)];
}

function longer(before: Worst, found: readonly WayHome[], pair: readonly Segment[]): Worst {
  let worst = before;
  for (const way of found) {
    const atHatchS = way.people.reduce<number | null>((most, one) => Math.max(most ?? 0, one.atHatchS), null);
    if (atHatchS !== null && (worst.atHatchS === null || atHatchS > worst.atHatchS)) worst = { ...worst, atHatchS };
    const { towS } = way;
    if (towS !== null && (worst.tow === null || towS > worst.tow.towS)) worst = { ...worst, tow: { towS, way } };
    if (way.totalS === null) {
      if (way.unknown.length > 0 && worst.unknown.length === 0) worst = { ...worst, unknown: way.unknown };
      if (way.blocked.length > 0 && worst.blocked.length === 0) worst = { ...worst, blocked: way.blocked };
    } else if (worst.totalS === null || way.totalS > worst.totalS) {
      worst = { ...worst, totalS: way.totalS, way, pair };
    }
  }
  return worst;
}

/** Indices [from, to) of the stretches that meet [fromS, toS). */
function stretches(changes: readonly number[], fromS: number, toS: number): readonly [number, number] {
  let from = 0;
  while (from < changes.length - 1 && (changes[from + 1] as number) <= fromS) from++;
  let to = from;
  while (to < changes.length - 1 && (changes[to] as number) < toS) to++;
  return [from, to];
}
