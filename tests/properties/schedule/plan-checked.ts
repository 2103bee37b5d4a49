/**
 * Plans a campaign to the end. Every answer of the engine is held against the independent checker, and the timeline is
 * replayed by code that shares nothing with planning.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { type CampaignPlan, planCampaign, type PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import type { EvaTimeline } from '@handrail/eva/timeline/timeline';
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
  const found = next.value;
  for (const { plan } of found.evas) {
    if (plan.solution !== null) expect(checkSolution(plan.evaModel.model, plan.solution)).toEqual([]);
  }
  if (options.onlyEva === undefined && found.evas.every(({ plan }) => plan.timeline !== null)) {
    const broken = replayTimeline(campaign, hardware, found.timeline).filter(({ severity }) => severity === 'error');
    expect(broken.map(({ rule, why }) => `${rule}: ${why}`)).toEqual([]);
  }
  return found;
}

export function firstEva({ timeline }: CampaignPlan): EvaTimeline {
  const [plan] = timeline.evas;
  if (plan === undefined) throw new Error('no EVA is planned');
  return plan;
}
