import type { Interval, Literal, Model, VariableId } from './model.ts';

/** How a proof and the engine read the variables of a model; a definition, computed from the model alone. */
export interface VariableRoles {
  /** Per variable: what stands for it, variable + offset. Most stand for themselves. */
  readonly standsFor: readonly { readonly variable: VariableId; readonly offset: number }[];
  /** Per variable: the presence that its bounds are conditional on, or null. */
  readonly owner: readonly (Literal | null)[];
}

/**
 * A variable has an owner when it is a time of exactly one interval, that interval is optional (its presence not settled by
 * the bounds of its boolean), and no linear, extreme result, transition total or objective reads it. The end of an interval of
 * constant duration is its start plus that where no other interval has that end and start and end have the interval's presence
 * as owner, or the interval is always present.
 */
export function variableRoles(model: Model): VariableRoles {
  const users = new Map<VariableId, number>();
  for (const interval of model.intervals) {
    for (const v of new Set(timesOf(interval))) users.set(v, (users.get(v) ?? 0) + 1);
  }
  const read = readElsewhere(model);
  const owner: (Literal | null)[] = model.variables.map(() => null);
  for (const interval of model.intervals) {
    if (!isOptional(model, interval)) continue;
    for (const v of timesOf(interval)) if (users.get(v) === 1 && !read.has(v)) owner[v] = interval.presence;
  }
  const standsFor = model.variables.map((_, variable) => ({ variable, offset: 0 }));
  for (const interval of model.intervals) {
    const { start, end, duration } = interval;
    if (typeof duration !== 'number' || start === end || users.get(end) !== 1) continue;
    const isWhole = !isOptional(model, interval) || (owner[start] !== null && owner[end] !== null);
    if (isWhole) standsFor[end] = { variable: start, offset: duration };
  }
  return { standsFor, owner };
}

/** Whether the interval may be present and may be absent, or is certainly absent. */
export function isOptional(model: Model, { presence }: Interval): boolean {
  if (presence === null) return false;
  const { min, max } = model.variables[presence.variable] as { min: number; max: number };
  return presence.holds === 1 ? min < 1 : max > 0;
}

export function timesOf({ start, end, duration }: Interval): VariableId[] {
  return typeof duration === 'number' ? [start, end] : [start, end, duration.variable];
}

function readElsewhere(model: Model): Set<VariableId> {
  const read = new Set<VariableId>();
  for (const c of model.constraints) {
    if (c.kind === 'linear') for (const { variable } of c.expression.terms) read.add(variable);
    if (c.kind === 'extreme') read.add(c.result);
    if (c.kind === 'sequence' && c.transitionTotal !== null) read.add(c.transitionTotal);
  }
  for (const { minimise } of model.objectives) for (const { variable } of minimise.terms) read.add(variable);
  return read;
}
