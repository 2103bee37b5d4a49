/** The Fulmar campaign, planned with a small budget: a valid timeline in about a second, not the best one. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';

export const FULMAR = join(import.meta.dirname, '..', '..', 'examples', 'fulmar.kdl');

export function fulmarCampaign(): { readonly campaign: Campaign; readonly hardware: HardwareModel } {
  const { campaign: read, problems } = readCampaign(
    [{ name: 'fulmar.kdl', text: readFileSync(FULMAR) }],
    standardLibrary,
    {
      templates,
    },
  );
  if (read === null) throw new Error(problems.map((problem) => `${problem.span.line}: ${problem.what}`).join('\n'));
  const campaign = fillComputedWindows(read);
  return { campaign, hardware: inferHardware(campaign, standardLibrary) };
}

export function plannedFulmar(conflictBudget = 300): {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly timeline: Timeline;
} {
  const { campaign, hardware } = fulmarCampaign();
  const running = planCampaign(campaign, hardware, { seed: 1, conflictBudget });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return { campaign, hardware, timeline: next.value.timeline };
}
