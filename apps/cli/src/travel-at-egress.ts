import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { LoadedCampaign } from './load-campaign.ts';

/** Time to the hatch from each place, with rails open as they are when that EVA starts. */
export function travelAtEgress(
  loaded: LoadedCampaign,
  timeline: Timeline,
): (eva: string, place: string, pace: number) => number | null {
  const facts = ruleFacts(loaded.campaign, loaded.hardware, loaded.library, timeline);
  const tables = new Map(facts.evas.map((entry) => [entry.eva.eva, entry.travel] as const));
  return (eva, place, pace) => tables.get(eva)?.homeSeconds(place, pace) ?? null;
}
