/** The timeline where a command is given none: as `handrail plan` would make it, with its seed and budget. */
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import type { LoadedCampaign } from '../load-campaign.ts';
import { DEFAULT_BUDGET } from './default-budget.ts';
import { searchPlan, stopSign } from './search-plan.ts';

export async function plannedTimeline({ campaign, hardware }: LoadedCampaign): Promise<Timeline> {
  const stop = stopSign(undefined);
  const found = await searchPlan(campaign, hardware, {
    seed: 1,
    conflictBudget: DEFAULT_BUDGET,
    shouldStop: stop.isUp,
  });
  stop.release();
  if (found.timeline.evas.length === 0)
    throw new ExitError(EXIT.noPlan, 'there is no plan to look at: handrail plan says why');
  return found.timeline;
}
