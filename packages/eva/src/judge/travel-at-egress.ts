import type { Timeline } from '../timeline/timeline.ts';
import { factsOf } from './facts-of.ts';
import type { OpenedCampaign } from './open-campaign.ts';

/** Time to the hatch from each place, with rails open as they are when that EVA starts. */
export function travelAtEgress(
  opened: OpenedCampaign,
  timeline: Timeline,
): (eva: string, place: string, pace: number) => number | null {
  const tables = new Map(factsOf(opened, timeline).evas.map((entry) => [entry.eva.eva, entry.travel] as const));
  return (eva, place, pace) => tables.get(eva)?.homeSeconds(place, pace) ?? null;
}
