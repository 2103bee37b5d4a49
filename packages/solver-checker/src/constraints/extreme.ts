import type { Extreme } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

export function extreme(constraint: Extreme, at: Assignment): string[] {
  const instants = constraint.points
    .filter((point) => at.isPresent(point.interval))
    .map((point) => at.instantOf(point));
  const expected =
    instants.length === 0
      ? constraint.otherwise
      : constraint.which === 'max'
        ? Math.max(...instants)
        : Math.min(...instants);
  const actual = at.valueOf(constraint.result);
  return actual === expected ? [] : [`the ${constraint.which} is ${expected}, the result says ${actual}`];
}
