/** One requirement each: the plan keeps it, and the times can be worked out on paper. Out at 0:01 and 0:02 where two go. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { describe, expect, it } from 'vitest';
import { firstEva, planChecked } from '../../properties/schedule/plan-checked.ts';
import {
  campaign,
  clock,
  EGRESS_MS,
  eva,
  hardware,
  hardwareModel,
  NO_LIMITS,
  passages,
  person,
  rail,
  request,
  role,
  type ShortEffects,
  SPAN,
  stint,
  task,
  windowSet,
} from '../../properties/schedule/small-campaign.ts';
import type { Stint, Task } from '@handrail/eva/campaign/campaign';

const MIN = 60;
const one = { people: [person('EV1')], evas: [eva('one', { ...passages(['EV1'], 1), longestS: 4 * 3600 })] };
const two = {
  people: [person('EV1'), person('EV2')],
  evas: [eva('one', { ...passages(['EV1', 'EV2'], 1), longestS: 4 * 3600 })],
};
const rails = [rail('porch', 'bay', 2)];
const by = (who: string, key: string, minutes: readonly number[], more: Partial<Stint> = {}) =>
  stint(key, minutes, [role('lead', [who], 'porch')], more);

function planned(
  crew: typeof one,
  tasks: readonly Task[],
  more: Partial<Campaign> = {},
  variables: Readonly<Record<string, readonly string[]>> = {},
  effects: Readonly<Record<string, ShortEffects>> = {},
) {
  const stints = tasks.flatMap((t) => t.stints);
  const found = planChecked(campaign({ ...crew, rails, tasks, more }), hardwareModel(variables, effects, stints));
  const plan = firstEva(found);
  const starts = Object.fromEntries(plan.stints.map(({ stint: key, startS }) => [key, startS / MIN]));
  return { plan, starts, leftOut: found.timeline.leftOut, bothInMin: plan.bothInS / MIN };
}

describe('a plan keeps', () => {
  it('the latest call of a gate', () => {
    const [a, b] = [by('EV1', 'a/x', [20]), by('EV1', 'b/x', [20])];
    const gate = {
      id: 'go',
      title: 'Go',
      before: 'b/x',
      caller: 'IV',
      latestPetS: 10 * MIN,
      conditions: [],
      onNo: 'stop',
      drops: [],
      span: SPAN,
    };
    expect(planned(one, [task('a', 1, [a]), task('b', 2, [b])], { gates: [gate] }).starts).toEqual({
      'b/x': 1,
      'a/x': 21,
    });
  });

  it('a join between two people', () => {
    const [a, b] = [by('EV1', 'a/x', [20]), by('EV2', 'a/y', [5])];
    const join = {
      id: 'free',
      title: 'free',
      task: 'a',
      releases: 'a/x',
      waits: 'a/y',
      says: null,
      listens: null,
      span: SPAN,
    };
    const { plan, starts } = planned(two, [task('a', 1, [a, b], { joins: [join] })]);
    expect(starts).toEqual({ 'a/x': 1, 'a/y': 21 });
    expect(plan.joins).toEqual([{ join: 'free', releasedS: 21 * MIN, waitsUntilS: 21 * MIN }]);
  });

  it('most lags as well as least ones', () => {
    const a = by('EV1', 'a/x', [10]);
    const long = by('EV2', 'b/x', [40]);
    const after = by('EV2', 'c/x', [5], { after: [{ stint: 'a/x', leastS: 4 * MIN, mostS: 6 * MIN, span: SPAN }] });
    // EV2 from 0:02: 40 then 5, so c starts at 0:42 and a ends between 0:36 and 0:38; or 5 first, waiting for a: 0:11 + 4.
    const { starts, bothInMin } = planned(two, [task('a', 1, [a]), task('b', 2, [long]), task('c', 3, [after])]);
    const lag = (starts['c/x'] as number) - ((starts['a/x'] as number) + 10);
    expect(lag).toBeGreaterThanOrEqual(4);
    expect(lag).toBeLessThanOrEqual(6);
    expect(bothInMin).toBe(2 + 45 + 2);
  });

  it('the voice loop for one stint at a time', () => {
    const tasks = ['EV1', 'EV2'].map((who, i) => task(`t${i}`, i + 1, [by(who, `t${i}/x`, [20], { voice: true })]));
    // EV1 first: 0:01 to 0:21, EV2 to 0:41, in 0:42, EV1 0:43. EV2 first: 0:02 to 0:22, EV1 to 0:42, in 0:43. At once: 0:24.
    expect(planned(two, tasks).bothInMin).toBe(43);
  });

  it('a tool for one at a time', () => {
    const tasks = ['EV1', 'EV2'].map((who, i) => task(`t${i}`, i + 1, [by(who, `t${i}/x`, [5, 15])]));
    const uses = { tools: [{ tool: 'driver', steps: [1], span: SPAN }] };
    const effects = { 't0/x': { more: uses }, 't1/x': { more: uses } };
    const free = planned(two, tasks).bothInMin;
    // Freely EV2 ends at 0:22, in 0:23, EV1 0:24. The second steps of 15 min cannot overlap: 0:06–0:21 and 0:21–0:36 by EV2
    // (in 0:37, EV1 0:38), or EV2 first from 0:07 to 0:22 and EV1 to 0:37, in 0:38.
    const there = { 'driver.holder': ['place:porch'] };
    const more = { hardware: [hardware('driver')] };
    expect([free, planned(two, tasks, more, there, effects).bothInMin]).toEqual([24, 38]);
  });

  it('away from an outside event that writes the same hardware, and needs what it leaves', () => {
    const event = (minutes: number) => ({
      id: 'move',
      title: 'Joint moves',
      atUtcMs: EGRESS_MS + minutes * 60_000,
      agreed: true,
      leaves: [{ variable: 'joint', value: 'parked', span: SPAN }],
      span: SPAN,
    });
    const effects = { 'a/x': { during: ['joint=turning'] }, 'b/x': { needs: ['joint=parked'] } };
    const tasks = [task('a', 1, [by('EV1', 'a/x', [20])]), task('b', 2, [by('EV1', 'b/x', [10])])];
    const with30 = planned(one, tasks, { events: [event(30)] }, { joint: ['turning', 'parked'] }, effects);
    expect(with30.starts['a/x']).toBeLessThanOrEqual(10);
    // The event is taken to happen within its cell of 10 s.
    expect(with30.starts['b/x']).toBeCloseTo(30 + 1 / 6, 5);
    const with15 = planned(one, tasks, { events: [event(15)] }, { joint: ['turning', 'parked'] }, effects);
    expect(with15.leftOut.map(({ task: id }) => id)).toEqual(['a']);
  });

  it('a request inside the window in which it can be in force', () => {
    const windows = [windowSet('quiet', [[30, 60]])];
    const requests = [request('off', { window: 'quiet', setLeadS: 0, verifyS: 2 * MIN, clearS: 3 * MIN })];
    const { plan } = planned(one, [task('a', 1, [by('EV1', 'a/x', [10], { under: ['off'] })])], { windows, requests });
    // Verified inside the window too: 0:30 + 2.
    expect(plan.holds.map(({ firstUseS, lastUseS }) => [firstUseS / MIN, lastUseS / MIN])).toEqual([[32, 42]]);
  });

  it('a refused request out of the plan, with its owner named', () => {
    const requests = [request('off', { status: 'refused' })];
    const { leftOut } = planned(one, [task('a', 1, [by('EV1', 'a/x', [10], { under: ['off'] })])], { requests });
    expect(leftOut).toEqual([{ task: 'a', why: 'one: a/x needs off, which power refused' }]);
  });

  it('clear of a rail that its own work may close', () => {
    const way = { ...rail('porch', 'wing', 1), openWhile: [{ variable: 'joint', allowed: ['parked'], span: SPAN }] };
    const long = rail('porch', 'wing', 9);
    const look = stint('a/look', [5], [role('lead', ['EV1'], 'wing')]);
    const free = by('EV1', 'b/free', [5]);
    const effects = { 'b/free': { needs: ['joint=parked'], leaves: ['joint=free'] } };
    const travel = (tasks: readonly Task[]) => {
      const stints = tasks.flatMap((t) => t.stints);
      const c = campaign({ ...one, rails: [way, { ...long, id: 'long' }], tasks });
      return firstEva(planChecked(c, hardwareModel({ joint: ['parked', 'free'] }, effects, stints))).moves[0];
    };
    const minutes = (move: { startS: number; endS: number } | undefined) =>
      ((move?.endS ?? 0) - (move?.startS ?? 0)) / MIN;
    expect(minutes(travel([task('a', 1, [look])]))).toBe(1);
    expect(minutes(travel([task('a', 1, [look]), task('b', 2, [free])]))).toBe(9);
  });

  it('a clock that must run long enough', () => {
    const effects = {
      'a/glue': { needs: ['glue=dry'], leaves: ['glue=wet'] },
      'a/load': { needs: ['part=idle'], leaves: ['part=loaded'] },
    };
    const cure = clock('cure', 30, 'glue=wet', 'part=loaded', { sense: 'least' });
    const tasks = [task('a', 1, [by('EV1', 'a/glue', [5]), by('EV1', 'a/load', [5])])];
    const variables = { glue: ['dry', 'wet'], part: ['idle', 'loaded'] };
    // Glue ends at 0:06; loaded at 0:36 at the earliest, so it starts at 0:31.
    expect(planned(one, tasks, { clocks: [cure] }, variables, effects).starts).toEqual({ 'a/glue': 1, 'a/load': 31 });
  });

  it('the sum of the runs of a clock that adds up', () => {
    const effects = {
      'a/off': { needs: ['bus=on'], leaves: ['bus=off'] },
      'a/on': { needs: ['bus=off'], leaves: ['bus=on'] },
      'b/off': { needs: ['bus=on'], leaves: ['bus=off'] },
      'b/on': { needs: ['bus=off'], leaves: ['bus=on'] },
    };
    const budget = (limitMin: number) =>
      clock('dark', limitMin, 'bus=off', 'bus=on', { kind: 'budget', onStop: 'accumulate' });
    const tasks = ['a', 'b'].map((id, i) =>
      task(id, i + 1, [by('EV1', `${id}/off`, [5]), by('EV1', `${id}/mid`, [8]), by('EV1', `${id}/on`, [5])]),
    );
    // Each run is 8 + 5 = 13 min from the end of "off" to the end of "on".
    const leftOut = (limitMin: number) =>
      planned(one, tasks, { clocks: [budget(limitMin)] }, { bus: ['on', 'off'] }, effects).leftOut.map(
        (left) => left.task,
      );
    expect([leftOut(26), leftOut(25)]).toEqual([[], ['b']]);
  });

  it('the pace of each person, in work and on the way', () => {
    const slow = { ...one, people: [person('EV1', { pace: 1.5 })] };
    const work = stint('a/x', [20], [role('lead', ['EV1'], 'bay')]);
    // Out 1, way 2 × 1.5, work 20 × 1.5, way 3, in 1.
    expect(planned(slow, [task('a', 1, [work])]).bothInMin).toBe(1 + 3 + 30 + 3 + 1);
  });

  it('the time in and out of foot restraints, but not between stays in the same one', () => {
    const at = (key: string, restraint: string) => stint(key, [10], [role('lead', ['EV1'], 'bay', { restraint })]);
    const limits = { ...NO_LIMITS, restraintIngressS: 2 * MIN, restraintEgressS: MIN };
    const minutes = (first: string, second: string) =>
      planned(one, [task('a', 1, [at('a/x', first), at('a/y', second)])], { limits }).bothInMin;
    // Out 1, way 2, in the restraint 2, 10 + 10, out of it 1, way 2, in 1; another restraint costs 1 + 2 more.
    expect([minutes('r1', 'r1'), minutes('r1', 'r2')]).toEqual([29, 32]);
  });

  it('the margin before the finish, where a clock wants it', () => {
    const effects = {
      'a/off': { needs: ['bus=on'], leaves: ['bus=off'] },
      'a/on': { needs: ['bus=off'], leaves: ['bus=on'] },
    };
    const dark = clock('dark', 40, 'bus=off', 'bus=on');
    const tasks = [
      task('a', 1, [by('EV1', 'a/off', [5]), by('EV2', 'a/on', [5])], { order: 'free' }),
      task('b', 2, [by('EV2', 'b/x', [30])]),
    ];
    // EV2: 30 + 5 from 0:02. "off" last ends before 0:32 and "on" at 0:37: a run of 5 min, all of the margin of 20 min is there.
    const { plan, starts } = planned(
      two,
      tasks,
      { clocks: [dark], limits: { ...NO_LIMITS, marginS: 20 * MIN } },
      { bus: ['on', 'off'] },
      effects,
    );
    expect(plan.claim.levels.find(({ name }) => name === 'margin')?.value).toBe(0);
    expect((starts['a/on'] as number) + 5 - ((starts['a/off'] as number) + 5)).toBeLessThanOrEqual(20);
  });
});
