import type { Timeline } from '@handrail/eva/timeline/timeline';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import type { LoadedCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { DEFAULT_BUDGET } from './default-budget.ts';
import { searchPlan, stopSign } from './search-plan.ts';

/**
 * The timeline in `file`; without a file the one that `handrail plan` would make, with its seed and budget.
 * @throws ExitError with code 2: the file is no timeline of this campaign; with that of no plan: there is none.
 */
export async function givenOrPlanned(
  { campaign, hardware }: LoadedCampaign,
  file: string | undefined,
): Promise<Timeline> {
  if (file !== undefined) return loadTimeline(file, campaign);
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
