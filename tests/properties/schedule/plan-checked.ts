/** Plans a campaign to the end; on the way every answer of the engine is held against the independent checker. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { type CampaignPlan, planCampaign, type PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import { expect } from 'vitest';

export function planChecked(
  campaign: Campaign,
  hardware: HardwareModel,
  options: Partial<PlanOptions> = {},
): CampaignPlan {
  const running = planCampaign(campaign, hardware, { seed: 1, conflictBudget: 20_000, ...options });
  let next = running.next();
  while (next.done !== true) next = running.next();
  for (const { plan } of next.value.evas) {
    if (plan.solution !== null) expect(checkSolution(plan.evaModel.model, plan.solution)).toEqual([]);
  }
  return next.value;
}
