/** An EVA planned again under way: the past stands, the rest may change. */
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { replanEva } from '@handrail/eva/schedule/replan-eva';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { describe, expect, it } from 'vitest';
import { planChecked } from '../../properties/schedule/plan-checked.ts';
import {
  campaign,
  eva,
  hardwareModel,
  passages,
  person,
  rail,
  role,
  SPAN,
  stint,
  task,
} from '../../properties/schedule/small-campaign.ts';

const MIN = 60;
const stints = [
  stint('a/x', [20], [role('lead', ['EV1'], 'bay')]),
  stint('b/x', [20], [role('lead', ['EV1', 'EV2'], 'porch')]),
  stint('c/x', [10], [role('lead', ['EV1', 'EV2'], 'bay')]),
];
const tasks = stints.map((s, i) => task(s.task, i + 1, [s]));
const campaignWith = (longestMin: number) =>
  campaign({
    people: [person('EV1'), person('EV2')],
    evas: [eva('one', { ...passages(['EV1', 'EV2'], 1), longestS: longestMin * MIN })],
    rails: [rail('porch', 'bay', 5)],
    tasks,
  });
const hardware = hardwareModel({}, {}, stints);

function replanned(timeline: Timeline, longestMin: number, nowMin: number): Timeline {
  const c = campaignWith(longestMin);
  const running = replanEva(
    c,
    hardware,
    timeline,
    { eva: 'one', nowS: nowMin * MIN },
    { seed: 1, conflictBudget: 5000 },
  );
  let next = running.next();
  while (next.done !== true) next = running.next();
  const { evaModel, solution, timeline: plan } = next.value;
  if (solution === null || plan === null) throw new Error('no plan');
  expect(checkSolution(evaModel.model, solution)).toEqual([]);
  const left = tasks.map(({ id }) => id).filter((id) => !plan.tasks.includes(id));
  const whole = { ...timeline, evas: [plan], leftOut: left.map((id) => ({ task: id, why: 'no room' })) };
  expect(replayTimeline(c, hardware, whole).filter(({ severity }) => severity === 'error')).toEqual([]);
  return whole;
}

describe('an EVA planned again at 0:12', () => {
  const { timeline } = planChecked(campaignWith(120), hardware);

  it('stays as it is when nothing has changed', () => {
    const again = replanned(timeline, 120, 12);
    expect(again.evas[0]?.bothInS).toBe(timeline.evas[0]?.bothInS);
    expect(again.evas[0]?.stints.filter(({ startS }) => startS < 12 * MIN)).toEqual(
      timeline.evas[0]?.stints.filter(({ startS }) => startS < 12 * MIN),
    );
  });

  it('drops what has not begun when the wall has come nearer, and keeps what has', () => {
    const begun = timeline.evas[0]?.stints.filter(({ startS }) => startS < 12 * MIN) ?? [];
    expect(begun.length).toBeGreaterThan(0);
    const again = replanned(timeline, 36, 12);
    expect(again.evas[0]?.tasks).not.toContain('c');
    for (const stay of begun) expect(again.evas[0]?.stints).toContainEqual(stay);
  });
});

describe('an EVA planned again after a pinned stint began late', () => {
  it('takes the start as it was, not as it was pinned', () => {
    const pins = [{ kind: 'start' as const, stint: 'a/x', petS: 8 * MIN, span: SPAN }];
    const c = { ...campaignWith(120), pins };
    const { timeline } = planChecked(c, hardware);
    const late = timeline.evas.map((plan) => ({
      ...plan,
      stints: plan.stints.map((s) => {
        const byS = s.stint === 'a/x' ? 4 * MIN : 0;
        return { ...s, startS: s.startS + byS, endS: s.endS + byS, stepEndsS: s.stepEndsS.map((end) => end + byS) };
      }),
    }));
    const running = replanEva(c, hardware, { ...timeline, evas: late }, { eva: 'one', nowS: 13 * MIN }, { seed: 1 });
    let next = running.next();
    while (next.done !== true) next = running.next();
    expect(next.value.timeline?.stints.find(({ stint: key }) => key === 'a/x')?.startS).toBe(12 * MIN);
  });
});
