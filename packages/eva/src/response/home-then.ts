/** The way home after the immediate actions of a response, from the states that it leaves and with the clocks as far on. */
import type { Segment } from '../wayhome/segments.ts';
import type { TravelTable } from '../vehicle/travel-table.ts';
import type { Basis } from '../wayhome/step-time.ts';
import { wayHomeInNineOfTen } from '../wayhome/way-home.ts';
import type { WayHome } from '../wayhome/way-home-plan.ts';
import type { Mode, WayHomeState } from '../wayhome/way-home-state.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';
import type { AnyResponse } from './any-response.ts';
import type { LeftState } from './left-states.ts';

/** The way home once the immediate actions are done, and what it leaves to the limit; null: no limit is stated, or no way. */
export interface HomeThen {
  readonly startS: number;
  readonly way: WayHome;
  readonly marginS: number | null;
}

export function homeThen(
  surface: WayHomeSurface,
  response: AnyResponse,
  self: Segment,
  petS: number,
  now: readonly Segment[],
  left: readonly LeftState[],
  delayS: number,
  mode: Mode,
): HomeThen {
  const { progress, ground } = surface;
  const arm = response.armStops ? 'dead' : 'alive';
  const finished = now.map((segment) => segment.index);
  const stateAt = (basis: Basis): WayHomeState => {
    const before = progress.state(now, finished, petS, arm, basis);
    const values = new Map(before.values);
    const writtenBy = new Map(before.writtenBy);
    for (const { variable, value } of left) {
      values.set(variable, value);
      writtenBy.set(variable, response.id);
    }
    const clocks = before.clocks.map((running) => ({ ...running, leftS: running.leftS - delayS }));
    return { ...before, values, writtenBy, clocks };
  };
  const { values } = stateAt('high');
  const what = { mode, arm, ...(mode === 'assist' ? { victim: self.person } : {}) } as const;
  const travelOf = (person: string): TravelTable => progress.travelOf(person, values);
  const way = wayHomeInNineOfTen(ground, stateAt, what, travelOf, surface.horizon);
  const startS = petS + delayS;
  const marginS = surface.limit === null || way.totalS === null ? null : surface.limit.petS - startS - way.totalS;
  return { startS, way, marginS };
}
