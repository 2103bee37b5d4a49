import type { Model, Solution } from '@handrail/solver/model/model';
import { Assignment } from './assignment.ts';

/** The value of each lexicographic level in a solution, in the order of `model.objectives`. */
export function evaluateObjectives(model: Model, solution: Solution): number[] {
  const at = new Assignment(model, solution);
  return model.objectives.map(({ minimise }) => at.sum(minimise));
}

/** Below 0: `a` is better. The first level that differs decides. */
export function compareLevels(a: readonly number[], b: readonly number[]): number {
  for (let level = 0; level < a.length; level++) {
    const difference = (a[level] as number) - (b[level] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}
