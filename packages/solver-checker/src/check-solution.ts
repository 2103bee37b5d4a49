import type { Constraint, Model, Solution } from '@handrail/solver/model/model';
import { Assignment } from './assignment.ts';
import { alternative } from './constraints/alternative.ts';
import { clause } from './constraints/clause.ts';
import { cumulative } from './constraints/cumulative.ts';
import { extreme } from './constraints/extreme.ts';
import { linear } from './constraints/linear.ts';
import { precedence } from './constraints/precedence.ts';
import { reservoir } from './constraints/reservoir.ts';
import { sequence } from './constraints/sequence.ts';
import { span } from './constraints/span.ts';
import { state } from './constraints/state.ts';
import { windows } from './constraints/windows.ts';
import type { Violation } from './violation.ts';

/**
 * Every way in which `solution` breaks `model`; empty when it is a solution. Each constraint is read from its meaning in
 * the model alone, by plain evaluation, with nothing shared with the engine. Exact: integers only, no tolerance.
 *
 * A solution of the wrong length or with values that are not integers is reported as such and looked at no further.
 * @checked tests/rejects/solver-solutions
 */
export function checkSolution(model: Model, solution: Solution): Violation[] {
  const shape = checkShape(model, solution);
  if (shape.length > 0) return shape;
  const at = new Assignment(model, solution);
  const violations = [...checkVariables(at), ...checkIntervals(at)];
  model.constraints.forEach((constraint, index) => {
    for (const message of checkConstraint(constraint, at)) {
      violations.push({ kind: constraint.kind, constraint: index, tag: constraint.tag, message });
    }
  });
  return violations;
}

/** The ways in which one constraint is broken, in words. */
export function checkConstraint(constraint: Constraint, at: Assignment): string[] {
  switch (constraint.kind) {
    case 'precedence':
      return precedence(constraint, at);
    case 'alternative':
      return alternative(constraint, at);
    case 'span':
      return span(constraint, at);
    case 'sequence':
      return sequence(constraint, at);
    case 'cumulative':
      return cumulative(constraint, at);
    case 'reservoir':
      return reservoir(constraint, at);
    case 'windows':
      return windows(constraint, at);
    case 'state':
      return state(constraint, at);
    case 'clause':
      return clause(constraint, at);
    case 'linear':
      return linear(constraint, at);
    default:
      return extreme(constraint, at);
  }
}

function outside(kind: string, message: string): Violation {
  return { kind, constraint: null, tag: null, message };
}

function checkShape(model: Model, solution: Solution): Violation[] {
  if (solution.length !== model.variables.length) {
    return [outside('shape', `${solution.length} values for ${model.variables.length} variables`)];
  }
  return model.variables.flatMap(({ name }, index) =>
    Number.isInteger(solution[index]) ? [] : [outside('shape', `${name} is ${solution[index]}, not an integer`)],
  );
}

function checkVariables(at: Assignment): Violation[] {
  return at.model.variables.flatMap(({ name, min, max }, index) => {
    const value = at.valueOf(index);
    return value >= min && value <= max ? [] : [outside('variable', `${name} is ${value}, outside ${min}..${max}`)];
  });
}

function checkIntervals(at: Assignment): Violation[] {
  return at.model.intervals.flatMap((_, id) => checkInterval(id, at).map((message) => outside('interval', message)));
}

/** The ways in which one interval, where present, does not fit its own duration or the horizon. */
export function checkInterval(id: number, at: Assignment): string[] {
  if (!at.isPresent(id)) return [];
  const duration = at.durationOf(id);
  const faults: string[] = [];
  if (duration < 0) faults.push(`${at.describe(id)} lasts ${duration}, less than nothing`);
  if (at.startOf(id) + duration !== at.endOf(id)) faults.push(`${at.describe(id)} does not last ${duration}`);
  if (at.startOf(id) < 0) faults.push(`${at.describe(id)} starts before 0`);
  if (at.endOf(id) > at.model.horizon) faults.push(`${at.describe(id)} ends after the horizon ${at.model.horizon}`);
  return faults;
}
