/** A small invented campaign with two people, a timeline by hand, and the way home at an instant of it. */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { EvaProgress } from '@handrail/eva/wayhome/eva-progress';
import { valuesAtEgress } from '@handrail/eva/wayhome/values-at-egress';
import type { Horizon } from '@handrail/eva/wayhome/horizon';
import { wayHomeGround, type WayHomeGround } from '@handrail/eva/wayhome/safe-until';
import { wayHome, wayHomeInNineOfTen } from '@handrail/eva/wayhome/way-home';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import type { WayHomeCase, WayHomeState } from '@handrail/eva/wayhome/way-home-state';

export interface SmallCase {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly timeline: Timeline;
  readonly eva: EvaTimeline;
  readonly ground: WayHomeGround;
  readonly progress: EvaProgress;
}

export function smallCase(campaignText: string, timelineText: string, opening = EXAMPLE_OPENING): SmallCase {
  const { campaign, problems } = readCampaign([{ name: 'small.kdl', text: opening + campaignText }], standardLibrary);
  if (campaign === null) throw new Error(problems.map(({ span, what }) => `${span.line}: ${what}`).join('\n'));
  const hardware = inferHardware(campaign, standardLibrary);
  const timeline = readTimelineNotation(timelineText, campaign);
  const eva = timeline.evas[0] as EvaTimeline;
  const ground = wayHomeGround(campaign, hardware, standardLibrary);
  return {
    campaign,
    hardware,
    timeline,
    eva,
    ground,
    progress: new EvaProgress(ground, valuesAtEgress(ground, timeline, eva), timeline, eva),
  };
}

export function stateAt(small: SmallCase, petS: number, what: WayHomeCase): WayHomeState {
  const now = small.progress.at(petS);
  return small.progress.state(
    now,
    now.map((segment) => segment.index),
    petS,
    what.arm,
    what.basis,
  );
}

/** As `wayAt`, with the times that hold nine times in ten. */
export function wayAtHigh(small: SmallCase, petS: number, what: Omit<WayHomeCase, 'basis'>): WayHome {
  const stateAtBasis = (basis: WayHomeCase['basis']): WayHomeState => stateAt(small, petS, { ...what, basis });
  const { values } = stateAtBasis('high');
  return wayHomeInNineOfTen(small.ground, stateAtBasis, what, (person) => small.progress.travelOf(person, values));
}

export function wayAt(
  small: SmallCase,
  petS: number,
  what: Partial<WayHomeCase> = {},
  horizon: Horizon = 'tonight',
): WayHome {
  const full: WayHomeCase = { mode: 'terminate', arm: 'alive', basis: 'planning', ...what };
  const state = stateAt(small, petS, full);
  return wayHome(small.ground, state, full, (person) => small.progress.travelOf(person, state.values), horizon);
}
