import type { EvaProgress, When } from './eva-progress.ts';
import type { Horizon } from './horizon.ts';
import { type SafeUntil, safeUntil, type WayHomeGround } from './safe-until.ts';
import type { Segment } from './segments.ts';
import type { ClosingWork } from './closing-jobs.ts';
import { closingWork, missedClocks, wayHome } from './way-home.ts';
import type { WayHome } from './way-home-plan.ts';
import type { WayHomeCase, WayHomeState } from './way-home-state.ts';

/** Solves one state; equal questions are answered once. */
export type Solve = (now: readonly Segment[], finished: readonly number[], when: When, what: WayHomeCase) => WayHome;

interface Work {
  readonly work: ClosingWork;
  /** Equal numbers are equal work. */
  readonly signature: number;
  readonly stopsClocks: boolean;
}
interface Asked {
  readonly now: readonly Segment[];
  readonly finished: readonly number[];
  readonly when: When;
  readonly isOnArm: boolean;
  readonly done: string;
  readonly people: string;
}

export function solver(ground: WayHomeGround, progress: EvaProgress, horizon: Horizon): Solve {
  const works = new Map<string, Work>();
  const opens = new Map<string, SafeUntil>();
  const signatures = new Map<string, number>();
  const known = new Map<string, WayHome>();
  /** One progress is asked for in several modes, one after the other: what does not depend on the mode is found once. */
  let last: Asked | null = null;
  return (now, finished, when, what) => {
    if (last === null || last.now !== now || last.finished !== finished || last.when !== when) {
      const isOnArm = now.some((segment) => segment.onArm !== null);
      const done = progress.workKey(now, finished, when);
      last = { now, finished, when, isOnArm, done, people: progress.peopleKey(now, finished, when) };
    }
    const arm = last.isOnArm ? what.arm : 'alive';
    let state: WayHomeState | null = null;
    const stateNow = (): WayHomeState => {
      state ??= progress.state(now, finished, when, what.arm, what.basis);
      return state;
    };
    const doneKey = what.mode === 'assist' ? '' : last.done;
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
      found = { work, signature, stopsClocks: work.jobs.some((job) => job.clocks.length > 0) };
      works.set(workKey, found);
    }
    const { work, signature, stopsClocks } = found;
    const key = `${last.people}|${signature}|${what.mode}|${arm}|${what.basis}`;
    const home = (state: WayHomeState): WayHome =>
      wayHome(ground, state, what, (person) => progress.travelOf(person, state.values), horizon, work);
    let way = known.get(key);
    if (way === undefined) {
      way = home({ ...stateNow(), clocks: [] });
      known.set(key, way);
    }
    if (!stopsClocks) return way;
    // How long a clock still has differs from pair to pair; the way only where it is too short.
    const clocks = progress.clocks(now, finished, when);
    if (missedClocks(way, clocks).length === 0) return way;
    const hurriedKey = `${key}|${clocks.map(({ clock, leftS }) => `${clock.id}=${leftS}`).join()}`;
    const hurried = known.get(hurriedKey) ?? home(stateNow());
    known.set(hurriedKey, hurried);
    return hurried;
  };
}
