import type { Clause } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

export function clause(constraint: Clause, at: Assignment): string[] {
  if (constraint.literals.some((literal) => at.holds(literal))) return [];
  const names = constraint.literals.map(
    ({ variable, holds }) => `${holds === 1 ? '' : 'not '}${at.model.variables[variable]?.name ?? variable}`,
  );
  return [`none of these holds: ${names.join(', ') || '(empty clause)'}`];
}
