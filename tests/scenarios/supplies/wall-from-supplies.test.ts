/** Where no suit-limit is stated, the suit's supplies set the wall: for planning, for the replay and for the rule, from one figure. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { exampleSuit } from '@handrail/eva/rules/example-suit';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { runRules } from '@handrail/eva/rules/run-rules';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { suitWall } from '@handrail/eva/suit/supplies-wall';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, it } from 'vitest';

/** A battery of 240 Wh, 90 % usable, 30 Wh kept, 40 W: (216 − 30) / 40 W = 4 h 39 min, ten minutes of it before PET 0. */
const WALL_S = (4 * 60 + 29) * 60;

function campaignWith(person: string, evaMore = ''): Campaign {
  const text = `handrail 1
library standard version="1"
campaign small "Small"
${exampleSuit('worn', { 'battery-start': '"240 Wh"' })}
person EV1 role=outside ${person}
person IV role=inside
eva day egress="2031-05-01T10:00:00Z"${evaMore} { out EV1 "5 min"; in EV1 "5 min"; close-hatch "5 min" }
task short rank=1 eva=day { stint work who=EV1 { minutes 60 } }
task long rank=2 eva=day { stint work who=EV1 { minutes 240 } }
`;
  const { campaign, problems } = readCampaign([{ name: 'c.kdl', text }], standardLibrary);
  if (campaign === null) throw new Error(problems.map(({ what }) => what).join('; '));
  return campaign;
}

const SUIT = 'suit=worn work-factor=1.0 body-mass="75 kg"';

function planned(campaign: Campaign) {
  const running = planCampaign(campaign, inferHardware(campaign, standardLibrary), { seed: 1, conflictBudget: 200 });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

describe('a suit without suit-limit', () => {
  const campaign = campaignWith(SUIT);

  it('sets the wall where its first reserve is reached, every constant at its worst', () => {
    const [person] = campaign.people;
    expect(person === undefined ? null : suitWall(campaign, person)).toEqual({
      petS: WALL_S,
      cause: 'battery of EV1 at its reserve, worst case at "hard" throughout',
    });
  });

  it('bounds the plan: what does not fit before it is left out', () => {
    const timeline = planned(campaign);
    expect(timeline.evas[0]?.wall?.petS).toBe(WALL_S);
    expect(timeline.evas[0]?.tasks).toEqual(['short']);
    expect(timeline.leftOut.map(({ task }) => task)).toEqual(['long']);
  });

  it('is found by replay and rule when a plan written by hand passes it', () => {
    const timeline = readTimelineNotation(
      'eva day\nEV1 0:00-0:05 out\nEV1 0:05-4:05 long/work\nEV1 4:25-4:30 in\nhatch 4:30-4:35',
      campaign,
    );
    const hardware = inferHardware(campaign, standardLibrary);
    const rules = new Set([
      ...replayTimeline(campaign, hardware, timeline).map(({ rule }) => rule),
      ...runRules(ruleFacts(campaign, hardware, standardLibrary, timeline), 0).map(({ rule }) => rule),
    ]);
    expect(rules).toContain('replay/both-are-in-before-the-wall');
    expect(rules).toContain('home/both-are-in-before-the-wall');
  });
});

describe('a stated limit', () => {
  it('stands before what the supplies give', () => {
    const campaign = campaignWith(`${SUIT} suit-limit="7 h"`);
    const [person] = campaign.people;
    expect(person === undefined ? null : suitWall(campaign, person)).toEqual({ petS: 7 * 3600, cause: 'suit of EV1' });
  });

  it('of the EVA counts where it is the tighter', () => {
    expect(planned(campaignWith(SUIT, ' longest="3 h"')).evas[0]?.wall?.petS).toBe(3 * 3600);
  });

  it('is absent without suit and without limit: no wall is claimed', () => {
    const campaign = campaignWith('pace=1.0');
    const [person] = campaign.people;
    expect(person === undefined ? undefined : suitWall(campaign, person)).toBeNull();
    expect(planned(campaign).evas[0]?.wall).toBeNull();
  });
});
