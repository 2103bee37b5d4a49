import type { Model } from '@handrail/solver/model/model';
import { campaignModel } from './campaigns/campaign-model.ts';
import { drawCampaign } from './campaigns/draw-campaign.ts';

export interface CampaignOptions {
  readonly stints: number;
  readonly seed: number;
  /** Every role named; otherwise half of the tasks may be led by anybody. */
  readonly named: boolean;
}

/**
 * A generated campaign of 12 to 120 stints, the same for a seed on every machine, that can be done by construction: two lanes to 40
 * stints, three to 80, four beyond. Times in 10 s. Levels: value left out, finish, travel.
 */
export function generateCampaign({ stints, seed, named }: CampaignOptions): Model {
  const crew = stints <= 40 ? 2 : stints <= 80 ? 3 : 4;
  const campaign = drawCampaign(seed, { stints, crew, openPercent: named ? 0 : 50 });
  return campaignModel(campaign, `campaign-${stints}-${seed}${named ? '-named' : ''}`);
}
