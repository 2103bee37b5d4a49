import type { Cumulative } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/**
 * The load only rises where a member starts, so it is enough to add up who runs at each start. A member of no length
 * runs at no instant. Quadratic in the members, on purpose: nothing here to get wrong.
 */
export function cumulative(constraint: Cumulative, at: Assignment): string[] {
  const running = constraint.members.filter(
    ({ interval }) => at.isPresent(interval) && at.startOf(interval) < at.endOf(interval),
  );
  const faults: string[] = [];
  for (const instant of new Set(running.map(({ interval }) => at.startOf(interval)))) {
    const now = running.filter(({ interval }) => at.startOf(interval) <= instant && instant < at.endOf(interval));
    const load = now.reduce((sum, { demand }) => sum + demand, 0);
    if (load > constraint.capacity) {
      const names = now.map(({ interval }) => at.interval(interval).name).join(', ');
      faults.push(`at ${instant} the load is ${load}, above the capacity ${constraint.capacity} (${names})`);
    }
  }
  return faults;
}
