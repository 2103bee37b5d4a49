/** What is known before one EVA is planned: its tasks, its crew, its wall, and how the hardware stands at PET 0. */
import type { Campaign, Eva, Person, Pin, Stint, Task } from '../campaign/campaign.ts';
import type { HardwareModel, StintEffects } from '../hardware/effects.ts';
import { suitWall } from '../suit/supplies-wall.ts';
import { indoorsWall } from '../timeline/indoors-wall.ts';
import type { EvaTimeline, PlannedMove, PlannedStint } from '../timeline/timeline.ts';
import { type Carried, carriedItems } from './carried-items.ts';
import { cellsDown, cellsUp, durationInCells } from './grid.ts';
import { LONGEST_SEARCHED_S } from './horizon.ts';
import type { Travel } from './travel.ts';

export interface EvaProblem {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly travel: Travel;
  readonly eva: Eva;
  /** Tasks that may fall into this EVA, by rank. */
  readonly tasks: readonly Task[];
  /** Of these, the ones that must be in (used to ask why something was left out); empty in ordinary planning. */
  readonly forced: ReadonlySet<string>;
  /** Value of each state variable at PET 0. */
  readonly initial: ReadonlyMap<string, string>;
  /** Pose of each arm at PET 0. */
  readonly armPoses: ReadonlyMap<string, string>;
  /** Large items in hand, by stint key. */
  readonly carried: ReadonlyMap<string, Carried>;
  /** Persons who leave by the hatch. */
  readonly crew: readonly Person[];
  readonly wall: Wall | null;
  /** Cells after which nothing may end. */
  readonly horizon: number;
  readonly pins: readonly Pin[];
  readonly past: Past | null;
  /** Change from this as little as may be, before finish and travel count; null: change is free. */
  readonly leastChangeFrom: EvaTimeline | null;
  /** UTC ends (ms) of stints planned in earlier EVAs, by stint key. */
  readonly flown: ReadonlyMap<string, number>;
  /** Tasks not planned yet that a later EVA could still take. */
  readonly mayFlyLater: ReadonlySet<string>;
  /** Clocks that earlier EVAs have left running. */
  readonly running: ReadonlySet<string>;
}

/** What has begun already, when the rest of an EVA is planned again. */
export interface Past {
  /** Nothing new starts before this. */
  readonly nowS: number;
  readonly begun: readonly PlannedStint[];
  /** Moves begun, each the last of its person or arm: they are finished, whatever comes after. */
  readonly moves: readonly PlannedMove[];
}

export interface Wall {
  readonly petS: number;
  readonly cause: string;
}

export interface ProblemInput {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly travel: Travel;
  readonly eva: Eva;
  readonly tasks: readonly Task[];
  readonly initial: ReadonlyMap<string, string>;
  readonly armPoses: ReadonlyMap<string, string>;
  readonly forced?: ReadonlySet<string>;
  readonly pins?: readonly Pin[];
  readonly past?: Past | null;
  readonly leastChangeFrom?: EvaTimeline | null;
  readonly flown?: ReadonlyMap<string, number>;
  readonly mayFlyLater?: ReadonlySet<string>;
  readonly running?: ReadonlySet<string>;
  /** Look beyond the wall: the wall stays as a requirement that can be named and set aside. */
  readonly beyondWall?: boolean;
}

/** The tag of the wall among the requirements. */
export const WALL_TAG = 'wall';

export function evaProblem(input: ProblemInput): EvaProblem {
  const { campaign, eva } = input;
  const crew = crewOf(campaign, eva);
  const wall = wallOf(campaign, eva, crew);
  return {
    ...input,
    tasks: [...input.tasks].sort((a, b) => a.rank - b.rank),
    forced: input.forced ?? new Set(),
    pins: input.pins ?? campaign.pins,
    past: input.past ?? null,
    leastChangeFrom: input.leastChangeFrom ?? null,
    flown: input.flown ?? new Map(),
    mayFlyLater: input.mayFlyLater ?? new Set(),
    running: input.running ?? new Set(),
    carried: carriedItems(campaign, input.hardware),
    crew,
    wall,
    horizon: cellsDown(wall === null || input.beyondWall === true ? LONGEST_SEARCHED_S : wall.petS),
  };
}

/** Those who pass the hatch; where no passage is written, everybody outside. */
export function crewOf(campaign: Campaign, eva: Eva): readonly Person[] {
  const named = new Set(eva.egress.map(({ person }) => person));
  const outside = campaign.people.filter(({ role }) => role === 'outside');
  return named.size === 0 ? outside : outside.filter(({ id }) => named.has(id));
}

/**
 * The tightest of the stated limits; a suit without a stated one counts by its supplies. null when none is stated: then no plan can be called
 * in time.
 */
export function wallOf(campaign: Campaign, eva: Eva, crew: readonly Person[]): Wall | null {
  let wall: Wall | null = null;
  const consider = (petS: number | null, cause: string) => {
    if (petS !== null && (wall === null || petS < wall.petS)) wall = { petS, cause };
  };
  consider(eva.longestS, `longest EVA stated for ${eva.title}`);
  const indoors = indoorsWall(campaign, eva);
  if (indoors !== null) consider(indoors.petS, indoors.cause);
  for (const person of crew) {
    const suit = suitWall(campaign, person);
    if (suit !== null) consider(suit.petS, suit.cause);
  }
  return wall;
}

export function effectsOf(problem: EvaProblem, stint: Stint): StintEffects | null {
  return problem.hardware.effects.get(stint.key) ?? null;
}

/** Grid cell of an instant, early or late side. */
export function petCells(problem: EvaProblem, utcMs: number, side: 'down' | 'up'): number {
  const petS = (utcMs - problem.eva.egressUtcMs) / 1000;
  return side === 'down' ? cellsDown(petS) : cellsUp(petS);
}

/** When each person is outside, cells: passages go one at a time in the written order, from PET 0. */
export function egressTimes(problem: EvaProblem): ReadonlyMap<string, readonly [number, number]> {
  const times = new Map<string, readonly [number, number]>();
  let at = 0;
  for (const { person, durationS } of problem.eva.egress) {
    const end = at + durationInCells(durationS);
    times.set(person, [at, end]);
    at = end;
  }
  return times;
}
