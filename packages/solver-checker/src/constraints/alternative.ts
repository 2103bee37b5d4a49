import type { Alternative } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/** An absent master has no present option; a present one has exactly one, with the same start, end and duration. */
export function alternative(constraint: Alternative, at: Assignment): string[] {
  const { master, options } = constraint;
  const chosen = options.filter((option) => at.isPresent(option));
  const name = at.interval(master).name;
  if (!at.isPresent(master)) {
    return chosen.length === 0 ? [] : [`${name} is absent but ${chosen.length} of its options are present`];
  }
  const option = chosen[0];
  if (option === undefined || chosen.length > 1) {
    return [`${name} is present with ${chosen.length} present options instead of one`];
  }
  const faults: string[] = [];
  if (at.startOf(option) !== at.startOf(master) || at.endOf(option) !== at.endOf(master)) {
    faults.push(`${at.describe(master)} does not run with its chosen option ${at.describe(option)}`);
  }
  if (at.durationOf(option) !== at.durationOf(master)) {
    faults.push(`${name} lasts ${at.durationOf(master)}, its chosen option ${at.durationOf(option)}`);
  }
  return faults;
}
