import { ruleFacts } from '../rules/rule-facts.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { OpenedCampaign } from './open-campaign.ts';

/** Time to the hatch from each place, with rails open as they are when that EVA starts. */
export function travelAtEgress(
  { campaign, hardware, library }: OpenedCampaign,
  timeline: Timeline,
): (eva: string, place: string, pace: number) => number | null {
  const facts = ruleFacts(campaign, hardware, library, timeline);
  const tables = new Map(facts.evas.map((entry) => [entry.eva.eva, entry.travel] as const));
  return (eva, place, pace) => tables.get(eva)?.homeSeconds(place, pace) ?? null;
}
