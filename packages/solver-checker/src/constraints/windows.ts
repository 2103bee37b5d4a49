import type { Windows } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/** A stretch of no length is its instant: inside [a, b) when a ≤ t < b. Any other stretch counts as half-open. */
export function windows(constraint: Windows, at: Assignment): string[] {
  const { from, to, when } = constraint;
  if (!at.allHold(when) || !at.isPresent(from.interval) || !at.isPresent(to.interval)) return [];
  const begin = at.instantOf(from);
  const finish = at.instantOf(to);
  if (begin > finish) return [`the stretch runs backwards from ${begin} to ${finish}`];
  const isInside = ([a, b]: readonly [number, number]) => a <= begin && (begin === finish ? begin < b : finish <= b);
  const meets = ([a, b]: readonly [number, number]) =>
    begin === finish ? a <= begin && begin < b : begin < b && a < finish;
  if (constraint.mode === 'inside') {
    return constraint.windows.some(isInside) ? [] : [`[${begin}, ${finish}] lies within none of the windows`];
  }
  return constraint.windows
    .filter(meets)
    .map(([a, b]) => `[${begin}, ${finish}] meets the window [${a}, ${b}) it has to stay out of`);
}
