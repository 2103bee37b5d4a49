/** The ways home from one pair of segments that two people can be in at once, over all that can be so meanwhile. */
import type { EvaProgress } from './eva-progress.ts';
import type { ProgressPair } from './progress-network.ts';
import type { Segment } from './segments.ts';
import type { Solve } from './solve-state.ts';
import type { WayHomeMemory } from './way-home-memory.ts';
import type { WayHome } from './way-home-plan.ts';
import { type ArmIs, type Mode, MODES } from './way-home-state.ts';

export interface WorstOfPair {
  /** Longest of those that are known; null: none is. */
  readonly totalS: number | null;
  readonly way: WayHome | null;
  /** Longest until anybody is at the hatch, over the same ways; null: none is known. */
  readonly atHatchS: number | null;
  /** The one of them in which somebody is towed for the longest; null: nobody is. */
  readonly tow: { readonly towS: number; readonly way: WayHome } | null;
  /** Somebody may stand where nothing is known, or where no safe stop is in reach. */
  readonly unknown: readonly string[];
  readonly blocked: WayHome['blocked'];
}
export const NO_WAY: WorstOfPair = { totalS: null, way: null, atHatchS: null, tow: null, unknown: [], blocked: [] };

export function segmentsOfPair({ a, b }: ProgressPair): readonly Segment[] {
  return a === b ? [a] : [a, b];
}

/** All that can be while people are in these segments, each once, and the worst of it. */
export type WaysOfPair = Readonly<Record<Mode, { readonly all: readonly WayHome[]; readonly worst: WorstOfPair }>>;

/**
 * Each step taken as not begun and as done; what others do as done or not where it may be either; the arm as it may be.
 * @param arms whether the arm may also stop
 */
export function waysOfPair(
  progress: EvaProgress,
  now: readonly Segment[],
  solve: Solve,
  arms: readonly ArmIs[],
  memory: WayHomeMemory,
): WaysOfPair {
  const choices = now.map((segment) =>
    segment.kind === 'work' && progress.turnsAtEnd(segment) ? [segment.index, segment.index + 1] : [segment.index],
  );
  const allFinished = choices.reduce<number[][]>(
    (rows, list) => rows.flatMap((row) => list.map((one) => [...row, one])),
    [[]],
  );
  const cases = now.some((segment) => segment.onArm !== null) ? arms : arms.slice(0, 1);
  const whens = progress.anywhere(now);
  const key = `${cases.length}${whens.map((when) => allFinished.map((one) => `;${progress.wholeKey(now, one, when)}`).join(''))}`;
  const known = memory.pairs.get(key);
  if (known !== undefined) return known;
  const found = { terminate: new Set<WayHome>(), abort: new Set<WayHome>(), assist: new Set<WayHome>() };
  for (const when of whens) {
    for (const finished of allFinished) {
      for (const mode of MODES) {
        for (const arm of cases) found[mode].add(solve(now, finished, when, { mode, arm, basis: 'high' }));
      }
    }
  }
  const made = {
    terminate: withWorst([...found.terminate]),
    abort: withWorst([...found.abort]),
    assist: withWorst([...found.assist]),
  };
  memory.pairs.set(key, made);
  return made;
}

function withWorst(all: readonly WayHome[]): WaysOfPair[Mode] {
  return { all, worst: worstOf(all) };
}

function worstOf(found: readonly WayHome[]): WorstOfPair {
  let { totalS, way, atHatchS, tow, unknown, blocked } = NO_WAY;
  for (const one of found) {
    for (const person of one.people) if (atHatchS === null || person.atHatchS > atHatchS) atHatchS = person.atHatchS;
    if (one.towS !== null && (tow === null || one.towS > tow.towS)) tow = { towS: one.towS, way: one };
    if (one.totalS === null) {
      if (unknown.length === 0) unknown = one.unknown;
      if (blocked.length === 0) blocked = one.blocked;
    } else if (totalS === null || one.totalS > totalS) [totalS, way] = [one.totalS, one];
  }
  return { totalS, way, atHatchS, tow, unknown, blocked };
}
