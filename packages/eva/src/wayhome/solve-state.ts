import type { EvaProgress } from './eva-progress.ts';
import type { Horizon } from './horizon.ts';
import type { WayHomeGround } from './safe-until.ts';
import type { Segment } from './segments.ts';
import { wayHome } from './way-home.ts';
import type { WayHome } from './way-home-plan.ts';
import type { WayHomeCase } from './way-home-state.ts';

/** Solves one state; equal questions are answered once. */
export type Solve = (
  now: readonly Segment[],
  finished: readonly number[],
  atS: number | null,
  what: WayHomeCase,
) => WayHome;

export function solver(ground: WayHomeGround, progress: EvaProgress, horizon: Horizon): Solve {
  const known = new Map<string, WayHome>();
  return (now, finished, atS, what) => {
    const arm = now.some((segment) => segment.onArm !== null) ? what.arm : 'alive';
    const key = `${progress.stateKey(now, finished, atS, what.mode === 'terminate')}|${what.mode}|${arm}|${what.basis}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const state = progress.state(now, finished, atS, what.arm, what.basis);
    const found = wayHome(ground, state, what, (person) => progress.travelOf(person, state.values), horizon);
    known.set(key, found);
    return found;
  };
}
