import { type Model, type VariableId } from '../model/model.ts';

/** A model seen as a project: tasks with fixed lengths, arcs without circles, renewable resources, one time to make early. */
export interface Project {
  readonly n: number;
  readonly duration: Int32Array;
  /** Least start of each task. */
  readonly release: Int32Array;
  readonly deadline: Int32Array;
  /** Arcs into and out of each task, start to start. */
  readonly before: readonly (readonly { readonly task: number; readonly lag: number }[])[];
  readonly after: readonly (readonly { readonly task: number; readonly lag: number }[])[];
  readonly capacity: Int32Array;
  /** Demands of each task, those above nothing. */
  readonly uses: readonly (readonly { readonly resource: number; readonly demand: number }[])[];
  /** Tasks so that each comes after those before it. */
  readonly topological: Int32Array;
  readonly objective: VariableId;
}

/** Null when the model is anything more than a project. */
export function readProjectOf(model: Model): Project | null {
  const n = model.intervals.length;
  const [goal] = model.objectives;
  if (n === 0 || model.objectives.length !== 1 || goal === undefined) return null;
  const [term] = goal.minimise.terms;
  if (goal.minimise.terms.length !== 1 || term === undefined || term.coefficient !== 1) return null;
  const duration = new Int32Array(n);
  const release = new Int32Array(n);
  const deadline = new Int32Array(n);
  const timesSeen = new Set<number>();
  for (const [i, interval] of model.intervals.entries()) {
    if (interval.presence !== null || typeof interval.duration !== 'number') return null;
    if (timesSeen.has(interval.start) || timesSeen.has(interval.end)) return null;
    timesSeen.add(interval.start);
    timesSeen.add(interval.end);
    const start = model.variables[interval.start] as { min: number; max: number };
    const end = model.variables[interval.end] as { min: number; max: number };
    duration[i] = interval.duration;
    release[i] = Math.max(0, start.min, end.min - interval.duration);
    deadline[i] = Math.min(model.horizon, end.max, start.max + interval.duration);
  }
  if (!timesSeen.has(term.variable) || timesSeen.size !== model.variables.length) return null;
  const before: { task: number; lag: number }[][] = Array.from({ length: n }, () => []);
  const after: { task: number; lag: number }[][] = Array.from({ length: n }, () => []);
  const capacities: number[] = [];
  const uses: { resource: number; demand: number }[][] = Array.from({ length: n }, () => []);
  for (const c of model.constraints) {
    if (c.kind === 'precedence' && c.when.length === 0) {
      const shift = (p: typeof c.from) => p.offset + (p.of === 'end' ? (duration[p.interval] as number) : 0);
      const lag = c.lag + shift(c.from) - shift(c.to);
      if (c.from.interval === c.to.interval) {
        if (lag > 0) return null;
        continue;
      }
      before[c.to.interval]?.push({ task: c.from.interval, lag });
      after[c.from.interval]?.push({ task: c.to.interval, lag });
    } else if (c.kind === 'cumulative') {
      for (const { interval, demand } of c.members) {
        if (demand > c.capacity) return null;
        if (demand > 0) uses[interval]?.push({ resource: capacities.length, demand });
      }
      capacities.push(c.capacity);
    } else if (c.kind === 'sequence' && c.first === null && c.last === null && c.transitionTotal === null) {
      if (c.transitions.some((gap) => gap !== 0)) return null;
      for (const { interval } of c.members) uses[interval]?.push({ resource: capacities.length, demand: 1 });
      capacities.push(1);
    } else return null;
  }
  const topological = sortTopologically(n, before, after);
  if (topological === null) return null;
  return {
    n,
    duration,
    release,
    deadline,
    before,
    after,
    capacity: Int32Array.from(capacities),
    uses,
    topological,
    objective: term.variable,
  };
}

function sortTopologically(
  n: number,
  before: readonly (readonly unknown[])[],
  after: readonly (readonly { readonly task: number }[])[],
): Int32Array | null {
  const waiting = Int32Array.from(before, (arcs) => arcs.length);
  const sorted: number[] = [];
  for (let i = 0; i < n; i++) if (waiting[i] === 0) sorted.push(i);
  for (let x = 0; x < sorted.length; x++) {
    for (const { task } of after[sorted[x] as number] as readonly { task: number }[]) {
      if (--(waiting[task] as number) === 0) sorted.push(task);
    }
  }
  return sorted.length === n ? Int32Array.from(sorted) : null;
}
