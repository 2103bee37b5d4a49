/** The way home after the immediate actions of a response, from the states that it leaves and with the clocks as far on. */
import type { Segment } from '../wayhome/segments.ts';
import { wayHome } from '../wayhome/way-home.ts';
import type { WayHome } from '../wayhome/way-home-plan.ts';
import type { Mode, WayHomeCase } from '../wayhome/way-home-state.ts';
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
  const what: WayHomeCase = {
    mode,
    arm: response.armStops ? 'dead' : 'alive',
    basis: 'high',
    ...(mode === 'assist' ? { victim: self.person } : {}),
  };
  const before = progress.state(
    now,
    now.map((segment) => segment.index),
    petS,
    what.arm,
    what.basis,
  );
  const values = new Map(before.values);
  const writtenBy = new Map(before.writtenBy);
  for (const { variable, value } of left) {
    values.set(variable, value);
    writtenBy.set(variable, response.id);
  }
  const clocks = before.clocks.map((running) => ({ ...running, leftS: running.leftS - delayS }));
  const state = { ...before, values, writtenBy, clocks };
  const way = wayHome(ground, state, what, (person) => progress.travelOf(person, values), surface.horizon);
  const startS = petS + delayS;
  const marginS = surface.limit === null || way.totalS === null ? null : surface.limit.petS - startS - way.totalS;
  return { startS, way, marginS };
}
