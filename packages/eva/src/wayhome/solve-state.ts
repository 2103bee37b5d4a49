import type { EvaProgress, When } from './eva-progress.ts';
import type { Horizon } from './horizon.ts';
import { safeUntil, type WayHomeGround } from './safe-until.ts';
import type { Segment } from './segments.ts';
import { closingWork, isDrawnTwice, missedClocks, wayHome } from './way-home.ts';
import { type KnownWork, WayHomeMemory } from './way-home-memory.ts';
import type { WayHome } from './way-home-plan.ts';
import type { WayHomeCase, WayHomeState } from './way-home-state.ts';

/** Solves one state; equal questions are answered once. Asked with `high` times, what two people do takes those of two. */
export type Solve = (now: readonly Segment[], finished: readonly number[], when: When, what: WayHomeCase) => WayHome;

interface Asked {
  readonly now: readonly Segment[];
  readonly finished: readonly number[];
  readonly when: When;
  readonly isOnArm: boolean;
  readonly done: string;
  readonly people: string;
}

export function solver(
  ground: WayHomeGround,
  progress: EvaProgress,
  horizon: Horizon,
  memory = new WayHomeMemory(),
): Solve {
  const { works, opens, ways } = memory;
  /** One progress is asked for in several modes, one after the other: what does not depend on the mode is found once. */
  let last: Asked | null = null;
  return (now, finished, when, what) => {
    const way = solve(now, finished, when, what);
    return what.basis === 'high' && isDrawnTwice(way)
      ? solve(now, finished, when, { ...what, basis: 'high-of-two' })
      : way;
  };

  function solve(now: readonly Segment[], finished: readonly number[], when: When, what: WayHomeCase): WayHome {
    if (last === null || last.now !== now || last.finished !== finished || last.when !== when) {
      const isOnArm = now.some((segment) => segment.onArm !== null);
      const done = progress.workKey(now, finished, when);
      last = { now, finished, when, isOnArm, done, people: progress.peopleKey(now, finished, when) };
    }
    const doneKey = what.mode === 'assist' ? '' : last.done;
    const workKey = `${doneKey}|${what.mode}|${what.basis}`;
    const known = works.get(workKey) ?? findWork(last, what, doneKey);
    works.set(workKey, known);
    const arm = last.isOnArm ? what.arm : 'alive';
    const key = `${last.people}|${known.signature}|${what.mode}|${arm}|${what.basis}`;
    let way = ways.get(key);
    if (way === undefined) {
      way = home({ ...stateOf(last, what), clocks: [] }, what, known);
      ways.set(key, way);
    }
    if (!known.stopsClocks) return way;
    // How long a clock still has differs from pair to pair; the way only where it is too short.
    const clocks = progress.clocks(now, finished, when);
    if (missedClocks(way, clocks).length === 0) return way;
    const hurriedKey = `${key}|${clocks.map(({ clock, leftS }) => `${clock.id}=${leftS}`).join()}`;
    const hurried = ways.get(hurriedKey) ?? home(stateOf(last, what), what, known);
    ways.set(hurriedKey, hurried);
    return hurried;
  }

  function stateOf({ now, finished, when }: Asked, what: WayHomeCase): WayHomeState {
    return progress.state(now, finished, when, what.arm, what.basis);
  }

  function findWork(asked: Asked, what: WayHomeCase, doneKey: string): KnownWork {
    const state = stateOf(asked, what);
    let open = opens.get(doneKey) ?? null;
    if (open === null && what.mode !== 'assist') {
      open = safeUntil(ground, state, horizon);
      opens.set(doneKey, open);
    }
    const work = closingWork(ground, state, what, horizon, open);
    const signature = memory.numberOf(JSON.stringify(work));
    return { work, signature, stopsClocks: work.jobs.some((job) => job.clocks.length > 0) };
  }

  function home(state: WayHomeState, what: WayHomeCase, { work }: KnownWork): WayHome {
    return wayHome(ground, state, what, (person) => progress.travelOf(person, state.values), horizon, work);
  }
}
