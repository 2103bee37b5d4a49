import type { Model, Solution } from '@handrail/solver/model/model';
import { Assignment } from '@handrail/solver-checker/assignment';
import { checkConstraint, checkInterval } from '@handrail/solver-checker/check-solution';
import { compareLevels, evaluateObjectives } from '@handrail/solver-checker/evaluate-objectives';
import { variablesOf, variablesOfInterval } from '@handrail/solver-checker/variables-of';

export interface Enumeration {
  /** How many solutions there are. Times of absent intervals are not told apart. */
  readonly count: number;
  /** A lexicographically best one; null when there is none. */
  readonly best: Solution | null;
  /** Value of each level in `best`. */
  readonly levels: readonly number[] | null;
}

interface Check {
  readonly run: (at: Assignment) => boolean;
  readonly variables: ReadonlySet<number>;
}

/**
 * All solutions of a tiny model, by trying every value of every variable and asking the checker. No bounding and no
 * inference but this: the third of start, duration and end follows from the other two, and the times of an absent interval
 * are held at their least value. `visit` sees each, and must copy what
 * it keeps. Throws past `nodeLimit` tries, so that a test cannot hang.
 */
export function enumerateSolutions(
  model: Model,
  nodeLimit = 5_000_000,
  visit: (solution: Solution) => void = () => {},
): Enumeration {
  const values: number[] = model.variables.map(() => Number.NaN);
  const at = new Assignment(model, values);
  const order = searchOrder(model);
  const ready = checksByDepth(model, order);
  let nodes = 0;
  let count = 0;
  let best: number[] | null = null;
  let levels: number[] | null = null;

  const descend = (depth: number) => {
    if (depth === order.length) {
      count += 1;
      visit(values);
      const reached = evaluateObjectives(model, values);
      if (levels === null || compareLevels(reached, levels) < 0) {
        levels = reached;
        best = [...values];
      }
      return;
    }
    const variable = order[depth] as number;
    for (const value of candidates(model, at, variable)) {
      nodes += 1;
      if (nodes > nodeLimit) throw new RangeError(`more than ${nodeLimit} nodes: the model is not tiny`);
      values[variable] = value;
      if ((ready[depth] as Check[]).every((check) => check.run(at))) descend(depth + 1);
    }
    values[variable] = Number.NaN;
  };
  descend(0);
  return { count, best, levels };
}

/** Booleans first, since they decide what the rest means; then the intervals; then what is computed from them. */
function searchOrder(model: Model): number[] {
  const booleans = model.variables.flatMap(({ min, max }, id) => (min >= 0 && max <= 1 ? [id] : []));
  const times = model.intervals.flatMap(({ start, end, duration }) =>
    typeof duration === 'number' ? [start, end] : [start, duration.variable, end],
  );
  return [...new Set([...booleans, ...times, ...model.variables.keys()])];
}

function checksByDepth(model: Model, order: readonly number[]): Check[][] {
  const checks: Check[] = [
    ...model.intervals.map((_, id) => ({
      variables: new Set(variablesOfInterval(id, model)),
      run: (at: Assignment) => checkInterval(id, at).length === 0,
    })),
    ...model.constraints.map((constraint) => ({
      variables: variablesOf(constraint, model),
      run: (at: Assignment) => checkConstraint(constraint, at).length === 0,
    })),
  ];
  const position = new Map(order.map((variable, depth) => [variable, depth]));
  const byDepth: Check[][] = order.map(() => []);
  for (const check of checks) {
    const last = Math.max(0, ...[...check.variables].map((variable) => position.get(variable) as number));
    (byDepth[last] as Check[]).push(check);
  }
  return byDepth;
}

function candidates(model: Model, at: Assignment, variable: number): number[] {
  const { min, max } = model.variables[variable] as Model['variables'][number];
  for (const [id, { start, end, duration, presence }] of model.intervals.entries()) {
    const length = typeof duration === 'number' ? duration : at.valueOf(duration.variable);
    const isTime = variable === start || variable === end;
    if (!isTime && (typeof duration === 'number' || variable !== duration.variable)) continue;
    const decided = presence === null || !Number.isNaN(at.valueOf(presence.variable));
    if (!decided) continue;
    if (!at.isPresent(id)) {
      if (isTimeOfThisAlone(model, variable, id)) return [min];
      continue;
    }
    const derived =
      variable === end ? at.valueOf(start) + length : variable === start ? at.valueOf(end) - length : null;
    if (derived !== null && !Number.isNaN(derived)) return derived >= min && derived <= max ? [derived] : [];
  }
  return Array.from({ length: max - min + 1 }, (_, i) => min + i);
}

/** A time that something outside its own interval reads has a meaning even while that interval is absent. */
function isTimeOfThisAlone(model: Model, variable: number, interval: number): boolean {
  const elsewhere = model.intervals.some(
    (_, id) => id !== interval && variablesOfInterval(id, model).includes(variable),
  );
  const read = model.constraints.some(
    (c) =>
      (c.kind === 'linear' && c.expression.terms.some((term) => term.variable === variable)) ||
      (c.kind === 'extreme' && c.result === variable) ||
      (c.kind === 'sequence' && c.transitionTotal === variable),
  );
  const valued = model.objectives.some(({ minimise }) => minimise.terms.some((term) => term.variable === variable));
  return !elsewhere && !read && !valued;
}
