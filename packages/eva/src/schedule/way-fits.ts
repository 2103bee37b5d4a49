/** Work that itself goes somewhere (rides, arm moves, walks with something in hand) must be long enough for the way. */
import { formatDuration } from '@handrail/quantity/time';
import type { Arm, Person, Stint } from '../campaign/campaign.ts';
import type { EvaProblem } from './eva-problem.ts';
import { secondsOf } from './grid.ts';
import { armRoute, armStays } from './post/post-arm-lanes.ts';
import { itemsOf } from './post/post-person-lanes.ts';
import { roleRange, type TeamMode } from './team-mode.ts';

/** Why this way of manning the stint is too short for its way; null: it fits. */
export function wayTooLong(problem: EvaProblem, stint: Stint, mode: TeamMode): string | null {
  for (const [index, role] of stint.roles.entries()) {
    if (role.at === role.to) continue;
    const body = mode.assigned[index] as string;
    const [from, to] = roleRange(stint, role);
    const hasS = secondsOf((mode.boundaries[to] as number) - (mode.boundaries[from] as number));
    const arm = problem.campaign.arms.find(({ id }) => id === body);
    const person = problem.campaign.people.find(({ id }) => id === body);
    const needsS =
      arm !== undefined
        ? transferS(problem, stint, mode, arm)
        : person !== undefined && role.startOn === null && role.endOn === null
          ? walkS(problem, stint, index, person)
          : 0;
    if (needsS !== null && needsS <= hasS) continue;
    const way = `${body} from ${role.at} to ${role.to}`;
    return needsS === null
      ? `${stint.key} takes ${way}, where there is no way`
      : `${stint.key} takes ${way} in ${formatDuration(hasS)}, but the way takes ${formatDuration(needsS)}`;
  }
  return null;
}

function transferS(problem: EvaProblem, stint: Stint, mode: TeamMode, arm: Arm): number | null {
  let totalS = 0;
  for (const { start, end } of armStays(problem, stint, mode, arm.id)) {
    const loaded = start.rider || end.rider || start.payload.length > 0 || end.payload.length > 0;
    const hops = armRoute(arm, start.pose, end.pose, loaded);
    if (hops === null) return null;
    for (const { seconds } of hops) totalS += seconds;
  }
  return totalS;
}

function walkS(problem: EvaProblem, stint: Stint, index: number, person: Person): number | null {
  const role = stint.roles[index];
  if (role === undefined) return 0;
  const items = itemsOf(problem.carried.get(stint.key)?.atStart ?? [], index);
  return problem.travel.secondsBetween(person, role.at, role.to, items);
}
