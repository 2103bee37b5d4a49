import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { stateWrites } from '../timeline/state-writes.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** One variable's value from `petS` on. */
export interface ValueFrom {
  readonly petS: number;
  readonly value: string;
}

/**
 * The values of every state variable over one EVA of a timeline: each variable's changes in order of time, the first being
 * its value as the EVAs and events before left it. A write takes effect at its own second.
 */
export function valuesOver(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  eva: string,
): ReadonlyMap<string, readonly ValueFrom[]> {
  const values = new Map([...hardware.variables.values()].map(({ id, initial }) => [id, initial] as const));
  const changes = new Map<string, ValueFrom[]>();
  let previousEndMs = Number.NEGATIVE_INFINITY;
  for (const plan of timeline.evas.toSorted((a, b) => a.petZeroUtcMs - b.petZeroUtcMs)) {
    const isWanted = plan.eva === eva;
    if (isWanted) for (const [id, value] of values) changes.set(id, [{ petS: Number.NEGATIVE_INFINITY, value }]);
    for (const write of stateWrites(campaign, hardware, plan)) {
      // Outside events stand in every EVA's list; each counts once.
      const utcMs = plan.petZeroUtcMs + write.petS * 1000;
      if (utcMs <= previousEndMs || write.petS > plan.bothInS) continue;
      values.set(write.variable, write.value);
      if (isWanted) changes.get(write.variable)?.push({ petS: write.petS, value: write.value });
    }
    if (isWanted) return changes;
    previousEndMs = plan.petZeroUtcMs + plan.bothInS * 1000;
  }
  return changes;
}

/** The last change that has taken effect; null: the variable is not known. */
export function valueAt(changes: readonly ValueFrom[] | undefined, petS: number): ValueFrom | null {
  return changes?.findLast((change) => change.petS <= petS) ?? null;
}
