import { stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import type { WayHomeGround } from './safe-until.ts';

/** As the EVAs before it in the timeline and the outside events leave the vehicle. */
export function valuesAtEgress(
  { campaign, hardware }: Pick<WayHomeGround, 'campaign' | 'hardware'>,
  timeline: Timeline,
  eva: EvaTimeline,
): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  const before = timeline.evas
    .filter((other) => other.petZeroUtcMs < eva.petZeroUtcMs)
    .sort((a, b) => a.petZeroUtcMs - b.petZeroUtcMs);
  for (const other of before) {
    for (const write of stateWrites(campaign, hardware, other)) {
      if (write.petS <= other.bothInS) values.set(write.variable, write.value);
    }
  }
  for (const event of campaign.events) {
    if (event.atUtcMs < eva.petZeroUtcMs) for (const leave of event.leaves) values.set(leave.variable, leave.value);
  }
  return values;
}
