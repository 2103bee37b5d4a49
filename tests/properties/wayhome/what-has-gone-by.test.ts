/**
 * What has happened by the time that two people stand where they stand: clocks, requests and events, against every execution of
 * small plans. The executions are written out by hand here: everybody goes on as soon as they may, or at the planned time where
 * that is later. A call from one to the other is acted on after 30 s. Invented hardware.
 */
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import type { Segment } from '@handrail/eva/wayhome/segments';
import { describe, expect, test } from 'vitest';
import { smallCase, type SmallCase } from './small-case.ts';

const MIN = 60;
const REACTION_S = 30;

function segmentOf(small: SmallCase, person: number, is: (segment: Segment) => boolean): Segment {
  const found = small.progress.segments[person]?.find(is);
  if (found === undefined) throw new Error('no such segment');
  return found;
}
const ofStint = (small: SmallCase, person: number, stint: string, step = 0): Segment =>
  segmentOf(small, person, (segment) => segment.stint === stint && segment.step === step);
const boundsOf = (small: SmallCase, key: string): readonly [number, number] =>
  small.campaign.tasks.flatMap((task) => task.stints).find((stint) => stint.key === key)?.duration.boundsS as [
    number,
    number,
  ];
function between([least, most]: readonly [number, number]): readonly number[] {
  const middle = Math.round((least + most) / 2);
  return [Math.floor(least), middle, Math.ceil(most)];
}

describe('a clock that one starts, and stops when the other has done', () => {
  const text = (limit: string): string => `
hardware heater "Heater plug" kind=data-connector at=bay state=mated
clock cold "Unit without heat" limit="${limit}" kind=difference sense=most on-stop=reset { starts heater demated; stops heater mated }
task off rank=1 eva=day { stint pull who=EV1 at=bay { demate heater; minutes low=3 likely=5 high=9 } }
task look rank=2 eva=day { stint see who=EV2 at=side { inspect side; minutes low=5 likely=9 high=16 } }
task on rank=3 eva=day { stint mate who=EV1 at=bay { mate heater; minutes low=3 likely=4 high=7; after "look/see" } }
`;
  const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:14-0:19 off/pull
EV2 0:15-0:24 look/see
EV1 0:24:30-0:28:30 on/mate
EV1 0:29-0:33 bay > porch
EV2 0:30-0:35 side > porch
EV2 0:35-0:40 in
EV1 0:40-0:45 in
hatch 0:45-0:50
wall 6:00 longest EVA`;
  const small = smallCase(text('1 h'), TIMELINE);
  const [pull, see, mate] = ['off/pull', 'look/see', 'on/mate'].map((key) => boundsOf(small, key));

  /** How long the clock has run when the first of the two is over, at the longest over all executions. */
  function longest(end: 'see' | 'mate'): number {
    let most = 0;
    for (const isPlanned of [false, true]) {
      for (const a of between(pull as readonly [number, number])) {
        for (const b of between(see as readonly [number, number])) {
          for (const c of between(mate as readonly [number, number])) {
            const pulled = (isPlanned ? 14 : 9) * MIN + a;
            const seen = 15 * MIN + b;
            const begin = Math.max(pulled, seen + REACTION_S, isPlanned ? 24.5 * MIN : 0);
            most = Math.max(most, (end === 'see' ? seen : begin + c) - pulled);
          }
        }
      }
    }
    return most;
  }
  const waiting = segmentOf(small, 0, (segment) => segment.kind === 'wait' && segment.startS === 19 * MIN);
  const seeing = ofStint(small, 1, 'look/see');
  const mating = ofStint(small, 0, 'on/mate');
  const inside = segmentOf(small, 1, (segment) => segment.kind === 'inside' && segment.index > 0);

  test('while they wait: as long as the other can take', () => {
    const [when] = small.progress.anywhere([waiting, seeing]);
    const [clock] = small.progress.clocks([waiting, seeing], [waiting.index, seeing.index], when ?? 0);
    expect(3600 - (clock?.leftS ?? 0)).toBeCloseTo(longest('see'), 6);
  });
  test('while it is being stopped: until that is done', () => {
    const [when] = small.progress.anywhere([mating, inside]);
    const [clock] = small.progress.clocks([mating, inside], [mating.index, inside.index], when ?? 0);
    expect(3600 - (clock?.leftS ?? 0)).toBeCloseTo(longest('mate'), 6);
  });
  test('so it may run out although it does not as planned', () => {
    // As planned 5 min after it was started; EV1 has then 5 min left of 10, mating again takes up to 90 % of its kind.
    const tight = smallCase(text('13 min'), TIMELINE);
    const surface = wayHomeSurface(tight.campaign, tight.hardware, standardLibrary, tight.timeline, tight.eva);
    const during = surface.samples.filter(({ petS, endS }) => petS >= 19 * MIN && endS <= 24 * MIN);
    expect(during.length).toBeGreaterThan(0);
    for (const sample of during) {
      expect(sample.planned.terminate.totalS).not.toBeNull();
      expect(sample.worst.terminate.blocked.map(({ cause }) => cause)).toContain('clock');
    }
    expect(surface.committed.map(({ person, causes }) => [person, causes])).toContainEqual(['EV1', ['clock']]);
  });
});

test('a clock that adds up has what earlier runs have taken, at their longest', () => {
  const small = smallCase(
    `
hardware heater "Heater plug" kind=data-connector at=bay state=mated
clock cold "Unit without heat" limit="1 h" kind=difference sense=most on-stop=accumulate { starts heater demated; stops heater mated }
task first rank=1 eva=day { stint both who=EV1 at=bay { demate heater; mate heater; minutes low=6 likely=8 high=14 } }
task again rank=2 eva=day { stint off who=EV1 at=bay { demate heater; report; minutes low=6 likely=8 high=14 } }
`,
    `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 first/both
steps 0:18 0:22
EV1 0:22-0:30 again/off
steps 0:26 0:30
EV1 0:30-0:34 bay > porch
EV2 0:35-0:40 in
EV1 0:40-0:45 in
hatch 0:45-0:50
wall 6:00 longest EVA`,
  );
  /** The bounds of a stint are shared out over its steps as the planning figures are. */
  const mostOf = (key: string, step: number): number => {
    const { stepsS } = small.campaign.tasks.flatMap((task) => task.stints).find((stint) => stint.key === key)
      ?.duration ?? {
      stepsS: [],
    };
    return (boundsOf(small, key)[1] * (stepsS[step] ?? 0)) / stepsS.reduce((sum, stepS) => sum + stepS, 0);
  };
  const report = ofStint(small, 0, 'again/off', 1);
  const porch = segmentOf(small, 1, (segment) => segment.kind === 'wait');
  const [when] = small.progress.anywhere([report, porch]);
  const [clock] = small.progress.clocks([report, porch], [report.index, porch.index], when ?? 0);
  // From demated to mated in the first stint, and on to the end of the second, each at its longest; whole seconds, outward.
  const goneS = mostOf('first/both', 1) + mostOf('again/off', 1);
  expect(3600 - (clock?.leftS ?? 0)).toBeGreaterThanOrEqual(goneS);
  expect(3600 - (clock?.leftS ?? 0)).toBeLessThanOrEqual(goneS + 2);
  const planned = small.progress.clocks([report, porch], [report.index, porch.index], 30 * MIN);
  expect(planned[0]?.leftS).toBe(3600 - 4 * MIN - 4 * MIN);
});

describe('what hangs on calls and on the time of day', () => {
  const small = smallCase(
    `
request power-off "Power off" owner=power inhibits=2 lead="2 min" verify="1 min" clear="1 min" longest="3 h" status=agreed
hardware plug "Plug" kind=power-connector at=bay state=mated controls=power-off
hardware other "Other" kind=data-connector at=tip state=mated
event cut-off "Other goes off" at="2031-05-01T10:30:00Z" agreed=#true { leaves other demated }
task half rank=1 eva=day { stint half who=EV1 at=bay { demate plug; mate plug; report; minutes low=15 likely=20 high=30 } }
`,
    `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
request power-off 0:17 0:20 0:20-0:35 0:36
EV1 0:20-0:40 half/half
steps 0:25 0:35 0:40
EV1 0:40-0:44 bay > porch
EV2 0:45-0:50 in
EV1 0:50-0:55 in
hatch 0:55-1:00
wall 6:00 longest EVA`,
  );
  const porch = segmentOf(small, 1, (segment) => segment.kind === 'wait');
  const stateIn = (step: number) => {
    const segment = ofStint(small, 0, 'half/half', step);
    const whens = small.progress.anywhere([segment, porch]);
    return whens.map((when) =>
      small.progress.state([segment, porch], [segment.index, porch.index], when, 'alive', 'high'),
    );
  };
  test('a request is in force while it is used, in every execution, and not for certain after its last use', () => {
    for (const step of [0, 1]) for (const state of stateIn(step)) expect(state.inForce.has('power-off')).toBe(true);
    for (const state of stateIn(2)) expect(state.inForce.has('power-off')).toBe(false);
    // As planned it is cleared at 0:36 only.
    const report = ofStint(small, 0, 'half/half', 2);
    const then = small.progress.state([report, porch], [report.index, porch.index], 35.5 * MIN, 'alive', 'high');
    expect(then.inForce.has('power-off')).toBe(true);
  });
  test('what happens at 10:30 has happened or not, wherever both can be', () => {
    // The second step starts at 0:14 plus a third of 15 min at the earliest and ends at 0:20 plus two thirds of 30 min at the latest.
    const others = stateIn(1).map((state) => state.values.get('other') ?? 'mated');
    expect(others.sort()).toEqual(['demated', 'mated']);
    const out = segmentOf(small, 0, (segment) => segment.kind === 'out');
    const before = segmentOf(small, 1, (segment) => segment.kind === 'inside');
    const early = small.progress.anywhere([out, before]);
    expect(early).toEqual([{ othersDone: 0 }]);
  });
});

test('what happens while somebody waits without having planned to may have happened', () => {
  const small = smallCase(
    `
hardware other "Other" kind=data-connector at=tip state=mated
event cut-off "Other goes off" at="2031-05-01T10:28:00Z" agreed=#true { leaves other demated }
task off rank=1 eva=day { stint pull who=EV1 at=bay { inspect bay; minutes low=4 likely=10.5 high=12 } }
task look rank=2 eva=day { stint see who=EV2 at=side { inspect side; minutes low=5 likely=9 high=16 } }
task on rank=3 eva=day { stint mate who=EV1 at=bay { inspect bay; minutes 4; after "look/see" } }
`,
    `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:14-0:24:30 off/pull
EV2 0:15-0:24 look/see
EV1 0:24:30-0:28:30 on/mate
EV1 0:28:30-0:32:30 bay > porch
EV2 0:30-0:35 side > porch
EV2 0:35-0:40 in
EV1 0:40-0:45 in
hatch 0:45-0:50
wall 6:00 longest EVA`,
  );
  const [, most] = boundsOf(small, 'off/pull');
  const [, seen] = boundsOf(small, 'look/see');
  // EV1 has done by 0:14 + 12 at the latest, before the event; EV2 may not have by 0:28, so EV1 may wait over it.
  expect(14 * MIN + most).toBeLessThan(28 * MIN);
  expect(15 * MIN + seen).toBeGreaterThan(28 * MIN);
  const now = [ofStint(small, 0, 'off/pull'), ofStint(small, 1, 'look/see')];
  expect(small.progress.anywhere(now)).toEqual([{ othersDone: 0 }, { othersDone: 1 }]);
});
