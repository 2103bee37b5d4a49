import type { Linear } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

export function linear(constraint: Linear, at: Assignment): string[] {
  if (!at.allHold(constraint.when)) return [];
  const total = at.sum(constraint.expression);
  return total <= constraint.bound ? [] : [`the sum is ${total}, above the bound ${constraint.bound}`];
}
