/** Whole small EVAs whose best plan can be worked out on paper; the sums stand beside each expected time. */
import { describe, expect, it } from 'vitest';
import {
  campaign,
  clock,
  eva,
  hardwareModel,
  passages,
  person,
  rail,
  request,
  role,
  stint,
  task,
  windowSet,
} from '../../properties/schedule/small-campaign.ts';
import { planChecked } from '../../properties/schedule/plan-checked.ts';

const MIN = 60;
const SHORT = eva('one', passages(['EV1', 'EV2'], 1));

describe('an EVA planned', () => {
  it('takes the two people out one after the other, lets them work side by side, and closes the hatch', () => {
    const one = stint('a/x', [20], [role('lead', ['EV1'], 'mast')]);
    const two = stint('b/y', [30], [role('lead', ['EV2'], 'bay')]);
    const c = campaign({
      evas: [eva('one', { ...passages(['EV1', 'EV2'], 5), closeHatchS: 7 * MIN, longestS: 120 * MIN })],
      tasks: [task('a', 1, [one]), task('b', 2, [two])],
      rails: [rail('porch', 'mast', 4), rail('porch', 'bay', 3)],
    });
    const { timeline } = planChecked(c, hardwareModel({}, {}, [one, two]));
    const [plan] = timeline.evas;
    // EV2: out 0:05-0:10, walks 3, works 30, walks 3 = 0:46, in 5 = 0:51. EV1 is back at 0:05+4+20+4 = 0:33 and goes in after EV2 (0:56), hatch 7.
    expect(plan?.bothInS).toBe(63 * MIN);
    expect(plan?.claim.status).toBe('optimal for these durations');
    expect(
      plan?.moves.filter(({ who }) => who === 'EV2').map(({ startS, endS, path }) => [startS / MIN, endS / MIN, path]),
    ).toEqual([
      [10, 13, ['porch', 'bay']],
      [43, 46, ['bay', 'porch']],
    ]);
  });

  it('shares work that anyone may do so that both are in earliest', () => {
    const stints = [12, 9, 7].map((m, i) => stint(`t${i}/x`, [m], [role('lead', ['EV1', 'EV2'], 'porch')]));
    const c = campaign({
      evas: [SHORT],
      tasks: stints.map((s, i) => task(s.task, i + 1, [s])),
      rails: [rail('porch', 'bay', 3)],
    });
    // EV1 is out at 0:01, EV2 at 0:02; EV2 goes in first. EV1 does 9 + 7 (0:17), EV2 12 (0:14, in 0:15); EV1 in 0:18.
    // Any other split ends later: EV2 with 16 min of work is in at 0:19, EV1 at 0:20.
    expect(planChecked(c, hardwareModel({}, {}, stints)).timeline.evas[0]?.bothInS).toBe(18 * MIN);
  });

  it('waits for what another person leaves, and keeps a clock', () => {
    const cut = stint('a/cut', [5], [role('lead', ['EV1'], 'porch')]);
    const prepare = stint('b/prepare', [20], [role('lead', ['EV2'], 'porch')]);
    const mate = stint('b/mate', [5], [role('lead', ['EV2'], 'porch')]);
    const c = campaign({
      evas: [SHORT],
      tasks: [task('a', 1, [cut]), task('b', 2, [prepare, mate])],
      rails: [rail('porch', 'bay', 3)],
      more: { clocks: [clock('cold', 10, 'heater=off', 'plug=mated')] },
    });
    const hardware = hardwareModel(
      { heater: ['on', 'off'], plug: ['open', 'mated'] },
      {
        'a/cut': { needs: ['heater=on'], leaves: ['heater=off'] },
        'b/mate': { needs: ['heater=off'], leaves: ['plug=mated'] },
      },
      [cut, prepare, mate],
    );
    const plan = planChecked(c, hardware).timeline.evas[0];
    const at = new Map(plan?.stints.map((s) => [s.stint, s]));
    // EV2 from 0:02: prepare 20, mate 5 = 0:27, in 0:28, then EV1 0:29. The clock of 10 min stops at 0:27 at the earliest and
    // the plug needs the heater off when it begins at 0:22, so the cut ends between 0:17 and 0:22.
    expect(plan?.bothInS).toBe(29 * MIN);
    expect(at.get('a/cut')?.endS).toBeGreaterThanOrEqual(17 * MIN);
    expect(at.get('a/cut')?.endS).toBeLessThanOrEqual(22 * MIN);
  });

  it('keeps to a window, the pad taken off at both ends', () => {
    const night = stint('a/x', [10], [role('lead', ['EV1'], 'porch')], {
      windowUses: [
        {
          window: 'night',
          mode: 'inside',
          part: 'whole',
          fromStep: 0,
          toStep: 1,
          prefers: false,
          span: { file: '', line: 1, column: 1, length: 1 },
        },
      ],
    });
    const c = campaign({
      evas: [SHORT],
      tasks: [task('a', 1, [night])],
      rails: [rail('porch', 'bay', 3)],
      more: {
        windows: [
          windowSet(
            'night',
            [
              [5, 15],
              [30, 45],
            ],
            30,
          ),
        ],
      },
    });
    // The first interval is 10 min long less two pads of 30 s: too short. The second opens at 30:30.
    expect(planChecked(c, hardwareModel({}, {}, [night])).timeline.evas[0]?.stints[0]?.startS).toBe(30 * MIN + 30);
  });

  it('leaves the least important work out when the wall is too near, and says by how much', () => {
    const stints = [30, 30, 30].map((m, i) => stint(`t${i}/x`, [m], [role('lead', ['EV1'], 'porch')]));
    const c = campaign({
      people: [person('EV1', { suitLimitS: 70 * MIN })],
      evas: [eva('one', passages(['EV1'], 1))],
      tasks: stints.map((s, i) => task(s.task, [2, 3, 1][i] as number, [s])),
      rails: [rail('porch', 'bay', 3)],
    });
    const { timeline, findings } = planChecked(c, hardwareModel({}, {}, stints));
    expect(timeline.evas[0]?.tasks).toEqual(['t2', 't0']);
    expect(timeline.leftOut).toEqual([
      {
        task: 't1',
        why: 'one: no room before the wall: with it both are in at 1:32 at the earliest, 22 min past 1:10 (suit of EV1)',
      },
    ]);
    expect(findings.map(({ rule }) => rule)).toEqual(['schedule/ranked-work-is-in']);
  });

  it('holds a request from its first to its last use, or twice where it may not be held so long', () => {
    const first = stint('a/x', [10], [role('lead', ['EV1'], 'porch')], { under: ['off'] });
    const wait = stint('b/w', [60], [role('lead', ['EV1'], 'porch')]);
    const second = stint('c/y', [10], [role('lead', ['EV1'], 'porch')], { under: ['off'] });
    const hardware = hardwareModel(
      { done: ['no', 'half', 'yes'] },
      {
        'a/x': { needs: ['done=no'], leaves: ['done=half'] },
        'b/w': { needs: ['done=half'], leaves: ['done=yes'] },
        'c/y': { needs: ['done=yes'] },
      },
      [first, wait, second],
    );
    const holdsWith = (longestHoldS: number | null) => {
      const tasks = [task('a', 1, [first]), task('b', 2, [wait]), task('c', 3, [second])];
      const c = campaign({
        evas: [SHORT],
        tasks,
        rails: [rail('porch', 'bay', 3)],
        more: { requests: [request('off', { longestHoldS })] },
      });
      return planChecked(c, hardware).timeline.evas[0]?.holds.map(({ firstUseS, lastUseS, askS, clearedS }) =>
        [askS, firstUseS, lastUseS, clearedS].map((s) => s / MIN),
      );
    };
    // Lead 10 + verify 2 before the first use, clear 3 after the last.
    expect(holdsWith(null)).toEqual([[-11, 1, 81, 84]]);
    expect(holdsWith(30 * MIN)).toEqual([
      [-11, 1, 11, 14],
      [59, 71, 81, 84],
    ]);
  });
});

describe('an EVA for which there is no plan', () => {
  it('is told to be too short for its own passages', () => {
    const one = stint('a/x', [5], [role('lead', ['EV1'], 'porch')]);
    const c = campaign({
      evas: [eva('one', { ...passages(['EV1', 'EV2'], 6), closeHatchS: 7 * MIN, longestS: 20 * MIN })],
      tasks: [task('a', 1, [one])],
      rails: [rail('porch', 'bay', 3)],
    });
    const { timeline, findings, evas } = planChecked(c, hardwareModel({}, {}, [one]));
    expect(timeline.evas).toEqual([]);
    expect(evas[0]?.plan.status).toBe('infeasible');
    // 4 passages of 6 min and 7 min for the hatch are 31 min.
    expect(findings.find(({ rule }) => rule === 'schedule/a-plan-exists')?.why).toBe(
      'out, in and closing the hatch take 31 min; that collides with both in by 0:20 (longest EVA stated for one)',
    );
  });

  it('that nobody limits comes with a finding instead of a claim to be in time', () => {
    const one = stint('a/x', [5], [role('lead', ['EV1'], 'porch')]);
    const c = campaign({ evas: [SHORT], tasks: [task('a', 1, [one])], rails: [rail('porch', 'bay', 3)] });
    const { timeline, findings } = planChecked(c, hardwareModel({}, {}, [one]));
    expect(timeline.evas[0]?.wall).toBe(null);
    expect(findings.map(({ rule, severity }) => [rule, severity])).toEqual([['schedule/wall-is-stated', 'unknown']]);
  });
});
