/**
 * Nobody may be outside in a window: it is the wall of the plan, of its replay, of its network and of every way home, on time and as
 * late as PET 0 may slip. Times by hand; the window is invented.
 */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { rules } from '@handrail/eva/rules/rules.generated';
import { runRules } from '@handrail/eva/rules/run-rules';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { describe, expect, test } from 'vitest';
import { smallCase } from '../../properties/wayhome/small-case.ts';

const MIN = 60;
/** Egress at 10:00; the window begins at 12:00, 2 min pad: both in by 1:58 on time, by 1:48 where PET 0 may slip by 10 min. */
const opening = (slip: string): string =>
  EXAMPLE_OPENING.replace('longest="6 h"', `longest="6 h" ${slip} indoors=field`);
const text = (minutes: number): string => `
window field "Strong field" pad="2 min" shown-as=band { interval "2031-05-01T06:00:00Z" "2031-05-01T07:00:00Z"; interval "2031-05-01T12:00:00Z" "2031-05-01T12:30:00Z" }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; minutes ${minutes} } }
`;
const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV1 0:14-1:24 look/see
EV1 1:24-1:28 bay > porch
EV2 1:28-1:33 in
EV1 1:33-1:38 in
hatch 1:38-1:43`;
const CAUSE = '"Strong field", in which nobody is outside';

function planned(minutes: number, slip: string): Timeline {
  const { campaign } = readCampaign([{ name: 'field.kdl', text: opening(slip) + text(minutes) }], standardLibrary);
  if (campaign === null) throw new Error('the text reads');
  const planning = planCampaign(campaign, inferHardware(campaign, standardLibrary), {
    seed: 1,
    conflictBudget: 500,
    skipReasons: true,
  });
  let next = planning.next();
  while (next.done !== true) next = planning.next();
  return next.value.timeline;
}

describe('a window in which nobody may be outside', () => {
  test.each([
    ['', 118],
    ['slip="10 min"', 108],
  ])('is the wall of the plan (%s): %i min', (slip, minutes) => {
    expect(planned(60, slip).evas[0]?.wall).toEqual({ petS: minutes * MIN, cause: CAUSE });
  });
  test('leaves out what does not fit before it', () => {
    // EV1 is out after 5 and at the bay after 9; back in 4, in 5 (EV2 is in by then), hatch 5: 23 min beside the work. 108 − 23 = 85.
    expect(planned(85, 'slip="10 min"').evas[0]?.stints.map(({ stint }) => stint)).toEqual(['look/see']);
    expect(planned(86, 'slip="10 min"').evas[0]?.stints).toEqual([]);
    expect(planned(86, '').evas[0]?.stints.map(({ stint }) => stint)).toEqual(['look/see']);
  });
  test('limits every way home, and the network', () => {
    const small = smallCase(text(70), TIMELINE, opening('slip="10 min"'));
    const surface = wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);
    expect(surface.limit).toEqual({ petS: 108 * MIN, cause: CAUSE });
    // At the bay with nothing open: EV2 is in after 5, while EV1 comes back in 4; then EV1 in 5, hatch 5: 15 min.
    const look = surface.lastMoments.find(({ stint }) => stint === 'look/see');
    expect(look?.abort.latestS).toBe((108 - 70 - 15) * MIN);
    const network = flexiblePlan(small.campaign, small.hardware, small.timeline, 'day');
    const wall = network?.requirements.find(({ kind }) => kind === 'wall');
    expect(wall?.mostS).toBe(108 * MIN);
  });
  test('is found by replay and rule where a plan written by hand passes it', () => {
    const late = TIMELINE.replace('hatch 1:38-1:43', 'hatch 1:44-1:49');
    for (const [timeline, isLate] of [
      [TIMELINE, false],
      [late, true],
    ] as const) {
      const small = smallCase(text(70), timeline, opening('slip="10 min"'));
      const replay = replayTimeline(small.campaign, small.hardware, small.timeline).map(({ rule }) => rule);
      expect(replay.includes('replay/both-are-in-before-the-wall')).toBe(isLate);
      const facts = ruleFacts(small.campaign, small.hardware, standardLibrary, small.timeline);
      const rule = rules.filter(({ id }) => id === 'home/both-are-in-before-the-wall');
      expect(runRules(facts, 0, rule).length > 0).toBe(isLate);
    }
  });
  test('one that is not there is an error of the text', () => {
    const { problems } = readCampaign(
      [{ name: 'field.kdl', text: EXAMPLE_OPENING.replace('longest="6 h"', 'longest="6 h" indoors=storm') }],
      standardLibrary,
    );
    expect(problems.map(({ what }) => what).join()).toContain('storm');
  });
});
