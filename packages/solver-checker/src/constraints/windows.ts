import type { Windows } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/** Read to the letter: the two formulas of the model, for each window [a, b). */
export function windows(constraint: Windows, at: Assignment): string[] {
  const { from, to, when } = constraint;
  if (!at.allHold(when) || !at.isPresent(from.interval) || !at.isPresent(to.interval)) return [];
  const begin = at.instantOf(from);
  const finish = at.instantOf(to);
  if (constraint.mode === 'inside') {
    const holds = constraint.windows.some(([a, b]) => a <= begin && begin < b && finish <= b);
    return holds ? [] : [`[${begin}, ${finish}] lies within none of the windows`];
  }
  return constraint.windows
    .filter(([a, b]) => begin < b && (begin >= a || finish > a))
    .map(([a, b]) => `[${begin}, ${finish}] meets the window [${a}, ${b}) it has to stay out of`);
}
