/** Tasks that cannot be in this EVA whatever the order: pinned out, refused, nobody to do them, a state nothing can bring about. */
import type { Stint, Task } from '../campaign/campaign.ts';
import { effectsOf, type EvaProblem, petCells } from './eva-problem.ts';
import { requestRanges } from './post/post-requests.ts';
import { windowCells } from './post/post-windows.ts';
import { stateUse, variablesOf } from './state-use.ts';
import { modeDuration, type TeamMode, teamModes } from './team-mode.ts';
import { wayTooLong } from './way-fits.ts';

export interface Screened {
  /** By stint key, for the tasks that remain. */
  readonly modes: ReadonlyMap<string, readonly TeamMode[]>;
  /** By task id: why not. */
  readonly reasons: ReadonlyMap<string, string>;
}

export function screenTasks(problem: EvaProblem): Screened {
  const modes = new Map<string, readonly TeamMode[]>();
  const reasons = new Map<string, string>();
  for (const task of problem.tasks) {
    const why = pinReason(problem, task) ?? manReason(problem, task, modes) ?? outsideReason(problem, task, modes);
    if (why !== null) reasons.set(task.id, why);
  }
  // A task that falls takes its writes with it, so others may fall after it.
  for (let fell = true; fell; ) {
    fell = false;
    const reachable = reachableValues(
      problem,
      problem.tasks.filter(({ id }) => !reasons.has(id)),
      modes,
    );
    for (const task of problem.tasks) {
      if (reasons.has(task.id)) continue;
      const why = stateReason(problem, task, modes, reachable);
      if (why === null) continue;
      reasons.set(task.id, why);
      fell = true;
    }
  }
  return { modes, reasons };
}

function pinReason(problem: EvaProblem, task: Task): string | null {
  const out = problem.pins.find((pin) => pin.kind === 'out' && pin.task === task.id);
  return out === undefined ? null : 'it is pinned out';
}

function manReason(problem: EvaProblem, task: Task, modes: Map<string, readonly TeamMode[]>): string | null {
  for (const stint of task.stints) {
    const found = teamModes(problem, stint);
    if (!found.ok) return found.why;
    const reasons = found.modes.map((mode) => wayTooLong(problem, stint, mode));
    const fitting = found.modes.filter((_, index) => reasons[index] === null);
    if (fitting.length === 0) return reasons[0] ?? null;
    modes.set(stint.key, fitting);
  }
  return null;
}

function outsideReason(
  problem: EvaProblem,
  task: Task,
  modes: ReadonlyMap<string, readonly TeamMode[]>,
): string | null {
  for (const request of problem.campaign.requests) {
    if (request.status !== 'refused') continue;
    const user = task.stints.find((stint) => requestRanges(problem, stint, request.id).length > 0);
    if (user !== undefined) return `${user.key} needs ${request.title}, which ${request.owner} refused`;
  }
  for (const stint of task.stints) {
    const shortest = Math.min(...(modes.get(stint.key) ?? []).map(modeDuration));
    if (shortest > problem.horizon) return `${stint.key} alone is longer than the EVA`;
    for (const use of stint.windowUses) {
      if (use.prefers || use.mode === 'outside') continue;
      const set = problem.campaign.windows.find(({ id }) => id === use.window);
      if (set !== undefined && windowCells(problem, set, 'inside').length > 0) continue;
      return `${stint.key} must be inside ${set?.title ?? use.window}, which has no interval in this EVA`;
    }
  }
  return null;
}

type Reachable = ReadonlyMap<string, ReadonlySet<string>>;

function reachableValues(
  problem: EvaProblem,
  tasks: readonly Task[],
  modes: ReadonlyMap<string, readonly TeamMode[]>,
): Reachable {
  const found = new Map<string, Set<string>>();
  const add = (variable: string, value: string) => {
    const values = found.get(variable);
    if (values === undefined) found.set(variable, new Set([value]));
    else values.add(value);
  };
  for (const [variable, value] of problem.initial) add(variable, value);
  for (const event of problem.campaign.events) {
    const cell = petCells(problem, event.atUtcMs, 'down');
    // The same events as those of the model: over before the horizon.
    if (cell < 0 || cell >= problem.horizon) continue;
    for (const { variable, value } of event.leaves) add(variable, value);
  }
  for (const stint of tasks.flatMap(({ stints }) => stints)) {
    const effects = effectsOf(problem, stint);
    if (effects === null) continue;
    for (const { variable } of effects.leaves) {
      for (const mode of modes.get(stint.key) ?? []) {
        const { write } = stateUse(stint, effects, variable, mode);
        if (write !== null) add(variable, write.value);
      }
    }
  }
  return found;
}

function stateReason(
  problem: EvaProblem,
  task: Task,
  modes: ReadonlyMap<string, readonly TeamMode[]>,
  reachable: Reachable,
): string | null {
  for (const stint of task.stints) {
    const reasons = (modes.get(stint.key) ?? []).map((mode) => unmetNeed(problem, stint, mode, reachable));
    const [first] = reasons;
    if (first !== undefined && first !== null && reasons.every((reason) => reason !== null)) return first;
  }
  return null;
}

function unmetNeed(problem: EvaProblem, stint: Stint, mode: TeamMode, reachable: Reachable): string | null {
  const effects = effectsOf(problem, stint);
  if (effects === null) return null;
  for (const variable of variablesOf(effects)) {
    const known = problem.hardware.variables.get(variable);
    if (known?.about === 'request') continue;
    const { needs, write } = stateUse(stint, effects, variable, mode);
    const values = reachable.get(variable) ?? new Set<string>();
    for (const need of needs) {
      if (need.allowed.length === 0) continue;
      if (write !== null && need.from > write.from) continue;
      if (need.allowed.some((value) => value !== 'unknown' && values.has(value))) continue;
      const now = problem.initial.get(variable) ?? 'unknown';
      const standing = now === 'unknown' ? 'its state is unknown' : `it is ${now}`;
      return `${stint.key} needs ${known?.title ?? variable} ${need.allowed.join(' or ')} (${need.words}); ${standing} and nothing planned in this EVA changes that`;
    }
  }
  return null;
}
