/** Clocks that run between EVAs: which ones planned work has started and not stopped, and whether a later EVA can stop one in time. */
import type { Campaign, Clock, Eva, StateChange } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { LONGEST_SEARCHED_S } from './horizon.ts';

/** Ids of the clocks that run at the end of these EVAs. */
export function runningClocks(
  campaign: Campaign,
  hardware: HardwareModel,
  evas: readonly EvaTimeline[],
): ReadonlySet<string> {
  const writes = evas.flatMap((eva) => writesOf(campaign, hardware, eva)).sort((a, b) => a.ms - b.ms);
  const running = new Set<string>();
  for (const { id, start, stop } of campaign.clocks) {
    const values = new Map<string, string>();
    const before = (variable: string) => values.get(variable) ?? hardware.variables.get(variable)?.initial ?? 'unknown';
    const isChange = (change: StateChange, variable: string, value: string) =>
      variable === change.variable && change.values.includes(value) && !change.values.includes(before(variable));
    for (const { variable, value } of writes) {
      // A stop that falls on the same write as a start counts last: the replay reads it so too.
      if (isChange(start, variable, value)) running.add(id);
      if (isChange(stop, variable, value)) running.delete(id);
      values.set(variable, value);
    }
  }
  return running;
}

interface Write {
  readonly ms: number;
  readonly variable: string;
  readonly value: string;
}

function writesOf(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline): Write[] {
  const steps = new Map(
    campaign.tasks.flatMap((task) => task.stints.map(({ key, steps: list }) => [key, list.length] as const)),
  );
  return eva.stints.flatMap(({ stint, startS, endS, stepEndsS }) =>
    (hardware.effects.get(stint)?.leaves ?? []).map(({ variable, value, step }) => {
      const isLast = step >= (steps.get(stint) ?? 0) - 1;
      const atS = step < 0 ? startS : isLast ? endS : (stepEndsS[step] ?? endS);
      return { ms: eva.petZeroUtcMs + atS * 1000, variable, value };
    }),
  );
}

/** Whether a task that can still fly in a later EVA stops the clock within its limit, whenever in that EVA it does. */
export function canStopLater(
  campaign: Campaign,
  hardware: HardwareModel,
  { stop, limitS }: Clock,
  eva: Eva,
  mayFlyLater: ReadonlySet<string>,
): boolean {
  const inTime = campaign.evas.filter(({ egressUtcMs, longestS }) => {
    const endMs = egressUtcMs + (longestS ?? LONGEST_SEARCHED_S) * 1000;
    return egressUtcMs > eva.egressUtcMs && (endMs - eva.egressUtcMs) / 1000 <= limitS;
  });
  const ids = new Set(inTime.map(({ id }) => id));
  const later = campaign.tasks.filter((task) => mayFlyLater.has(task.id) && task.evas.some((id) => ids.has(id)));
  return later.some(({ stints }) =>
    stints.some(({ key }) =>
      hardware.effects
        .get(key)
        ?.leaves.some(({ variable, value }) => variable === stop.variable && stop.values.includes(value)),
    ),
  );
}
