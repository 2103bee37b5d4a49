/** The ways home from one pair of segments that two people can be in at once, over all that can be so meanwhile. */
import type { EvaProgress } from './eva-progress.ts';
import type { ProgressPair } from './progress-network.ts';
import type { Segment } from './segments.ts';
import type { Solve } from './solve-state.ts';
import type { WayHomeMemory } from './way-home-memory.ts';
import type { WayHome } from './way-home-plan.ts';
import { type ArmIs, type Mode, MODES } from './way-home-state.ts';
import { type WaysOfPair, worstOf } from './worst-of-ways.ts';

export function segmentsOfPair({ a, b }: ProgressPair): readonly Segment[] {
  return a === b ? [a] : [a, b];
}

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
  const keys = whens.flatMap((when) => allFinished.map((finished) => progress.wholeKey(now, finished, when)));
  const key = `${cases.length};${keys.join(';')}`;
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
