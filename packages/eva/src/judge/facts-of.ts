import { type RuleFacts, ruleFacts } from '../rules/rule-facts.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { OpenedCampaign } from './open-campaign.ts';

const kept = new WeakMap<Timeline, RuleFacts>();

/** What rules read of a timeline, made once for the same timeline object, campaign and model. */
export function factsOf({ campaign, hardware, library }: OpenedCampaign, timeline: Timeline): RuleFacts {
  const known = kept.get(timeline);
  if (known !== undefined && known.campaign === campaign && known.hardware === hardware) return known;
  const made = ruleFacts(campaign, hardware, library, timeline);
  kept.set(timeline, made);
  return made;
}
