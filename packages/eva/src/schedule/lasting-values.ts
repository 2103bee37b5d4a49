/** Values on which a whole EVA can rest: those of variables that nothing planned in it may change. */
import type { Campaign, Eva } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { LONGEST_SEARCHED_S } from './horizon.ts';

/** Variable → value at PET 0, without the variables that a task, request or outside event of this EVA may write. */
export function lastingValues(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: Eva,
  initial: ReadonlyMap<string, string>,
  taskIds: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const lastMs = eva.egressUtcMs + LONGEST_SEARCHED_S * 1000;
  const events = campaign.events.filter(({ atUtcMs }) => atUtcMs >= eva.egressUtcMs && atUtcMs <= lastMs);
  const written = new Set<string>(events.flatMap(({ leaves }) => leaves.map(({ variable }) => variable)));
  for (const task of campaign.tasks) {
    if (!taskIds.has(task.id)) continue;
    for (const stint of task.stints) {
      const effects = hardware.effects.get(stint.key);
      for (const leave of effects?.leaves ?? []) written.add(leave.variable);
      for (const hold of effects?.holds ?? []) written.add(hold.variable);
    }
  }
  return new Map([...initial].filter(([variable]) => !written.has(variable)));
}
