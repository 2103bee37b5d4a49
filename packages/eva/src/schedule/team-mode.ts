/**
 * The ways to man a stint: each gives every role a body, and with it the length of every step. Roles that overlap go to
 * different bodies. Choosing one way per stint makes "the person who took it" and "the partner of EV2" plain facts of the
 * way chosen, where one choice per role would need constraints between roles.
 */
import type { Pin, Role, Stint } from '../campaign/campaign.ts';
import type { PlannedStint } from '../timeline/timeline.ts';
import { CELL_S } from './grid.ts';
import type { EvaProblem } from './eva-problem.ts';

export interface TeamMode {
  /** By role index. */
  readonly assigned: readonly string[];
  /** Which of the assigned are arms. */
  readonly arms: ReadonlySet<string>;
  /** Arms that carry a rider of this stint without having a role in it: they stand still at this pose. */
  readonly standing: readonly { readonly arm: string; readonly pose: string; readonly role: number }[];
  /** Cells from the start to each step boundary 0..steps.length; the last one is the duration. */
  readonly boundaries: readonly number[];
}

export function modeDuration(mode: TeamMode): number {
  return mode.boundaries.at(-1) as number;
}

/** Steps [from, to) of a role; the whole stint where it has no steps. */
export function roleRange(stint: Stint, role: Role): readonly [number, number] {
  const last = stepCount(stint);
  return role.toStep <= role.fromStep || stint.steps.length === 0
    ? [0, last]
    : [role.fromStep, Math.min(role.toStep, last)];
}

/** A stint without sentences counts as one step. */
export function stepCount(stint: Stint): number {
  return Math.max(1, stint.steps.length);
}

export type TeamModes =
  | { readonly ok: true; readonly modes: readonly TeamMode[] }
  /** Nobody can do it, in trade words. */
  | { readonly ok: false; readonly why: string };

export function teamModes(problem: EvaProblem, stint: Stint): TeamModes {
  const pinned = pastPersons(problem, stint) ?? personPins(problem.pins, stint);
  const choices: (readonly string[])[] = [];
  for (const [index, role] of stint.roles.entries()) {
    const free = role.candidates.filter((id) => isAvailable(problem, id));
    const pin = pinned.get(index);
    const choice = pin === undefined ? free : free.filter((id) => id === pin);
    if (choice.length === 0) {
      const wanted = pin ?? role.candidates.join(' or ');
      return {
        ok: false,
        why: `${stint.key} wants ${wanted} as ${role.name}, who has no part in EVA ${problem.eva.id}`,
      };
    }
    choices.push(choice);
  }
  const modes: TeamMode[] = [];
  for (const assigned of products(choices)) {
    if (clashes(stint, assigned)) continue;
    for (const standing of standingArms(problem, stint)) {
      const arms = new Set(problem.campaign.arms.map(({ id }) => id).filter((id) => assigned.includes(id)));
      modes.push({ assigned, arms, standing, boundaries: stepBoundaries(problem, stint, assigned) });
    }
  }
  if (modes.length > 0) return { ok: true, modes };
  return { ok: false, why: `no two different people, or no pose of the arm, fit the roles of ${stint.key}` };
}

function personPins(pins: readonly Pin[], stint: Stint): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  for (const pin of pins) {
    if (pin.kind !== 'person' || pin.stint !== stint.key) continue;
    const index = stint.roles.findIndex(({ name }) => name === pin.role);
    if (index !== -1) found.set(index, pin.person);
  }
  return found;
}

/** Whoever has begun a stint goes on with it. */
function pastPersons(problem: EvaProblem, stint: Stint): ReadonlyMap<number, string> | null {
  const begun = problem.past?.begun.find((planned) => planned.stint === stint.key);
  return begun === undefined ? null : new Map(begun.assigned.map((id, index) => [index, id] as const));
}

function isAvailable(problem: EvaProblem, id: string): boolean {
  const person = problem.campaign.people.find((candidate) => candidate.id === id);
  if (person === undefined) return problem.campaign.arms.some((arm) => arm.id === id);
  return person.role !== 'outside' || problem.crew.some((member) => member.id === id);
}

function* products(choices: readonly (readonly string[])[]): Generator<readonly string[]> {
  if (choices.length === 0) {
    yield [];
    return;
  }
  const [first = [], ...rest] = choices;
  for (const id of first) for (const tail of products(rest)) yield [id, ...tail];
}

function clashes(stint: Stint, assigned: readonly string[]): boolean {
  return stint.roles.some((a, i) =>
    stint.roles.some((b, j) => {
      if (j <= i || assigned[i] !== assigned[j]) return false;
      const [fromA, toA] = roleRange(stint, a);
      const [fromB, toB] = roleRange(stint, b);
      return fromA < toB && fromB < toA;
    }),
  );
}

/** For each rider whose arm has no role of its own, the poses at which the plate is at the rider's place. */
function standingArms(problem: EvaProblem, stint: Stint): readonly TeamMode['standing'][] {
  let found: TeamMode['standing'][] = [[]];
  for (const [role, { name, at, startOn, endOn }] of stint.roles.entries()) {
    const arm = startOn ?? endOn;
    if (name === 'arm' || arm === null) continue;
    if (stint.roles.some((other) => other.name === 'arm' && other.candidates.includes(arm))) continue;
    const poses = problem.campaign.arms.find(({ id }) => id === arm)?.poses.filter(({ place }) => place === at) ?? [];
    found = found.flatMap((so) => poses.map(({ id: pose }) => [...so, { arm, pose, role }]));
  }
  return found;
}

/**
 * Step lengths are the agreed ones times the pace of the slowest person at work in that step. Boundaries are rounded, not
 * lengths, so that the rounding of single steps does not add up.
 */
function stepBoundaries(problem: EvaProblem, stint: Stint, assigned: readonly string[]): number[] {
  const begun = problem.past?.begun.find((planned) => planned.stint === stint.key);
  if (begun !== undefined) return begunBoundaries(begun, stepCount(stint));
  const steps = stepCount(stint);
  const stated = stint.duration.stepsS;
  const total = stated.reduce((sum, s) => sum + s, 0);
  const usable = stated.length === steps && total > 0;
  const boundaries = [0];
  let elapsedS = 0;
  for (let step = 0; step < steps; step++) {
    const agreedS = usable
      ? ((stated[step] as number) * stint.duration.agreedS) / total
      : stint.duration.agreedS / steps;
    elapsedS += agreedS * slowestPace(problem, stint, assigned, step);
    boundaries.push(Math.round(elapsedS / CELL_S));
  }
  const last = boundaries.length - 1;
  if (elapsedS > 0 && boundaries[last] === 0) boundaries[last] = 1;
  return boundaries;
}

function slowestPace(problem: EvaProblem, stint: Stint, assigned: readonly string[], step: number): number {
  let slowest: number | null = null;
  for (const [index, role] of stint.roles.entries()) {
    const [from, to] = roleRange(stint, role);
    if (step < from || step >= to) continue;
    const person = problem.campaign.people.find(({ id }) => id === assigned[index]);
    if (person !== undefined && person.role === 'outside') slowest = Math.max(slowest ?? 0, person.pace);
  }
  return slowest ?? 1;
}

/** What has begun takes what the timeline under way says of it, not its planning figure. */
function begunBoundaries({ startS, endS, stepEndsS }: PlannedStint, steps: number): number[] {
  const cells = (s: number): number => Math.round((s - startS) / CELL_S);
  const boundaries = [0];
  for (let step = 0; step < steps; step++) {
    const end = step === steps - 1 ? endS : (stepEndsS[step] ?? endS);
    boundaries.push(Math.max(boundaries.at(-1) as number, cells(end)));
  }
  return boundaries;
}
