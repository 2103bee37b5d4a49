import type { Precedence } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

export function precedence(constraint: Precedence, at: Assignment): string[] {
  const { from, to, lag, when } = constraint;
  if (!at.allHold(when) || !at.isPresent(from.interval) || !at.isPresent(to.interval)) return [];
  const earliest = at.instantOf(from) + lag;
  const actual = at.instantOf(to);
  if (actual >= earliest) return [];
  return [
    `${at.describe(to.interval)} ${to.of} ${actual} comes before ${earliest} (${at.describe(from.interval)} ${from.of} + lag ${lag})`,
  ];
}
