/** The Pump EVA of the Fulmar campaign, planned again at 1:30 with work that runs late. */
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import { replanEva } from '@handrail/eva/schedule/replan-eva';
import { runsLate } from '@handrail/eva/timeline/runs-late';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { describe, expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const NOW_S = 90 * 60;
const planned = plannedFulmar(300);
const pump = (timeline: Timeline): EvaTimeline => {
  const found = timeline.evas.find(({ eva }) => eva === 'pump');
  if (found === undefined) throw new Error('no pump');
  return found;
};

function replanned(timeline: Timeline, leastChange: boolean): Timeline {
  const { campaign, hardware } = planned;
  const running = replanEva(
    campaign,
    hardware,
    timeline,
    { eva: 'pump', nowS: NOW_S, leastChange },
    { seed: 1, conflictBudget: 400 },
  );
  let next = running.next();
  while (next.done !== true) next = running.next();
  const plan = next.value.timeline;
  if (plan === null) throw new Error('no plan');
  return { ...timeline, evas: timeline.evas.map((eva) => (eva.eva === 'pump' ? plan : eva)) };
}

const movedS = (before: Timeline, after: Timeline): number =>
  compareTimelines(before, after).evas.reduce(
    (sum, { stints }) => sum + stints.reduce((s, { laterS }) => s + Math.abs(laterS), 0),
    0,
  );

describe('planned again under way', () => {
  const running = pump(planned.timeline).stints.find(({ startS, endS }) => startS < NOW_S && endS > NOW_S);

  test('something is under way at 1:30', () => {
    expect(running).toBeDefined();
  });

  test('nothing changes with least change when nothing is late', () => {
    expect(movedS(planned.timeline, replanned(planned.timeline, true))).toBe(0);
  });

  test('what has begun keeps its people and start, and ends when it is said to', () => {
    const late = runsLate(planned.timeline, 'pump', running?.stint ?? '', 12 * 60, NOW_S);
    if (late === null) throw new Error('it has not begun');
    const after = pump(replanned(late, true));
    for (const before of pump(late).stints.filter(({ startS }) => startS < NOW_S)) {
      const kept = after.stints.find(({ stint }) => stint === before.stint);
      expect(kept).toMatchObject({ startS: before.startS, endS: before.endS, assigned: before.assigned });
      // Steps within a stint are shown on the planner's grid of 10 s.
      before.stepEndsS.forEach((end, step) =>
        expect(Math.abs((kept?.stepEndsS[step] ?? 0) - end)).toBeLessThanOrEqual(5),
      );
    }
    expect(
      after.stints.every(
        ({ startS, stint }) => startS >= NOW_S || pump(late).stints.some((b) => b.stint === stint && b.startS < NOW_S),
      ),
    ).toBe(true);
  });

  test('least change moves no more than a plan that is free to change', () => {
    const late = runsLate(planned.timeline, 'pump', running?.stint ?? '', 12 * 60, NOW_S);
    if (late === null) throw new Error('it has not begun');
    expect(movedS(late, replanned(late, true))).toBeLessThanOrEqual(movedS(late, replanned(late, false)));
  });

  test('a stint that has not begun cannot run late', () => {
    const later = pump(planned.timeline).stints.at(-1)?.stint ?? '';
    expect(runsLate(planned.timeline, 'pump', later, 600, NOW_S)).toBeNull();
  });
});
