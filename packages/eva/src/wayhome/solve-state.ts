import type { EvaProgress } from './eva-progress.ts';
import type { Horizon } from './horizon.ts';
import { type SafeUntil, safeUntil, type WayHomeGround } from './safe-until.ts';
import type { Segment } from './segments.ts';
import type { ClosingWork } from './closing-jobs.ts';
import { closingWork, wayHome } from './way-home.ts';
import type { WayHome } from './way-home-plan.ts';
import type { WayHomeCase, WayHomeState } from './way-home-state.ts';

/** Solves one state; equal questions are answered once. */
export type Solve = (
  now: readonly Segment[],
  finished: readonly number[],
  atS: number | null,
  what: WayHomeCase,
) => WayHome;

export function solver(ground: WayHomeGround, progress: EvaProgress, horizon: Horizon): Solve {
  const works = new Map<string, { readonly work: ClosingWork; readonly signature: number }>();
  const opens = new Map<string, SafeUntil>();
  const signatures = new Map<string, number>();
  const known = new Map<string, WayHome>();
  return (now, finished, atS, what) => {
    const plannedS = atS ?? Math.max(...now.map((segment) => segment.startS));
    const arm = now.some((segment) => segment.onArm !== null) ? what.arm : 'alive';
    let state: WayHomeState | null = null;
    const stateNow = (): WayHomeState => {
      state ??= progress.state(now, finished, atS, what.arm, what.basis);
      return state;
    };
    const doneKey = what.mode === 'assist' ? '' : progress.workKey(now, finished, plannedS);
    const workKey = `${doneKey}|${what.mode}|${what.basis}`;
    let found = works.get(workKey);
    if (found === undefined) {
      let open = opens.get(doneKey);
      if (open === undefined && what.mode !== 'assist') {
        open = safeUntil(ground, stateNow(), horizon);
        opens.set(doneKey, open);
      }
      const work = closingWork(ground, stateNow(), what, horizon, open ?? null);
      const text = JSON.stringify(work);
      const signature = signatures.get(text) ?? signatures.size;
      signatures.set(text, signature);
      found = { work, signature };
      works.set(workKey, found);
    }
    const { work, signature } = found;
    const clocks = work.jobs.some((job) => job.clocks.length > 0) ? plannedS : '';
    const key = `${progress.peopleKey(now, finished, atS, plannedS)}|${signature}|${clocks}|${what.mode}|${arm}|${what.basis}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const here = stateNow();
    const way = wayHome(ground, here, what, (person) => progress.travelOf(person, here.values), horizon, work);
    known.set(key, way);
    return way;
  };
}
