import type { Reservoir } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/** Events of one instant count together: the level has one value per instant. */
export function reservoir(constraint: Reservoir, at: Assignment): string[] {
  const changes = new Map<number, number>();
  for (const event of constraint.events) {
    if (!at.isPresent(event.at.interval)) continue;
    const instant = at.instantOf(event.at);
    changes.set(instant, (changes.get(instant) ?? 0) + event.change);
  }
  const faults: string[] = [];
  const { initial, min, max } = constraint;
  if (initial < min || initial > max) faults.push(`the first level ${initial} is outside ${min}..${max}`);
  let level = initial;
  for (const [instant, change] of [...changes].sort((a, b) => a[0] - b[0])) {
    level += change;
    if (level < min || level > max) faults.push(`at ${instant} the level is ${level}, outside ${min}..${max}`);
  }
  return faults;
}
