import type { Constraint, IntervalId, Literal, Model, Point } from '@handrail/solver/model/model';

/** Every variable whose value can matter to one constraint: times and durations, presence, conditions, results. */
export function variablesOf(constraint: Constraint, model: Model): Set<number> {
  const variables = new Set<number>();
  const literals = (all: readonly Literal[]) => {
    for (const literal of all) variables.add(literal.variable);
  };
  const interval = (id: IntervalId) => {
    for (const variable of variablesOfInterval(id, model)) variables.add(variable);
  };
  const points = (all: readonly Point[]) => {
    for (const point of all) interval(point.interval);
  };
  switch (constraint.kind) {
    case 'precedence':
      points([constraint.from, constraint.to]);
      literals(constraint.when);
      break;
    case 'alternative':
      [constraint.master, ...constraint.options].forEach(interval);
      break;
    case 'span':
      [constraint.cover, ...constraint.members].forEach(interval);
      break;
    case 'sequence':
      for (const member of constraint.members) interval(member.interval);
      if (constraint.transitionTotal !== null) variables.add(constraint.transitionTotal);
      break;
    case 'cumulative':
      for (const member of constraint.members) interval(member.interval);
      break;
    case 'reservoir':
      points(constraint.events.map(({ at }) => at));
      break;
    case 'windows':
      points([constraint.from, constraint.to]);
      literals(constraint.when);
      break;
    case 'state':
      points([...constraint.writers, ...constraint.needs].flatMap(({ from, to }) => [from, to]));
      break;
    case 'clause':
      literals(constraint.literals);
      break;
    case 'linear':
      for (const term of constraint.expression.terms) variables.add(term.variable);
      literals(constraint.when);
      break;
    default:
      points(constraint.points);
      variables.add(constraint.result);
  }
  return variables;
}

export function variablesOfInterval(id: IntervalId, model: Model): number[] {
  const interval = model.intervals[id];
  if (interval === undefined) throw new RangeError(`the model has no interval ${id}`);
  const { start, end, duration, presence } = interval;
  const variables = [start, end];
  if (typeof duration !== 'number') variables.push(duration.variable);
  if (presence !== null) variables.push(presence.variable);
  return variables;
}
