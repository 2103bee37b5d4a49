import { giveStint } from '@handrail/eva/timeline/edit/give-stint';
import { layLanes } from '@handrail/eva/timeline/edit/lay-lanes';
import { insertMove } from '@handrail/eva/timeline/edit/insert-move';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const ground = { campaign, hardware };
const outside = new Set(campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id));
const keys = timeline.evas.flatMap((eva) => eva.stints.map(({ stint }) => stint));
const stintOf = (line: typeof timeline, key: string) =>
  line.evas.flatMap(({ stints }) => stints).find(({ stint }) => stint === key);
const errors = (line: typeof timeline) =>
  replayTimeline(campaign, hardware, line).filter(({ severity }) => severity === 'error');

test.each(timeline.evas.map((eva) => [eva.eva, eva] as const))(
  'laid anew, the lanes of EVA %s are those that the planner read off its solution',
  (_, eva) => {
    const laid = layLanes(ground, eva, eva, outside);
    expect(laid.moves).toEqual(eva.moves);
    expect(laid.joins.toSorted((a, b) => (a.join < b.join ? -1 : 1))).toEqual(
      eva.joins.toSorted((a, b) => (a.join < b.join ? -1 : 1)),
    );
    expect(laid.holds).toEqual(eva.holds);
  },
);

describe('a stint moved by hand', () => {
  const someMove = fc.record({
    stint: fc.constantFrom(...keys),
    byS: fc.integer({ min: -360, max: 360 }).map((cells) => cells * 10),
  });

  test('by nothing changes nothing, and says nothing of a hand', () => {
    for (const key of keys) {
      const startS = stintOf(timeline, key)?.startS as number;
      expect(moveStint({ stint: key, startS, pushesLater: true })(ground, timeline)).toBe(timeline);
    }
  });

  test('there and back again is the plan that it was, but for whose claim it is', () => {
    fc.assert(
      fc.property(someMove, ({ stint, byS }) => {
        const startS = stintOf(timeline, stint)?.startS as number;
        const there = moveStint({ stint, startS: startS + byS, pushesLater: false })(ground, timeline);
        const back = moveStint({ stint, startS, pushesLater: false })(ground, there);
        const bare = (line: typeof timeline) =>
          line.evas.map(({ claim: _claim, ...eva }) => ({
            ...eva,
            stints: eva.stints.toSorted((a, b) => a.startS - b.startS || (a.stint < b.stint ? -1 : 1)),
            joins: eva.joins.toSorted((a, b) => (a.join < b.join ? -1 : 1)),
          }));
        expect(bare(back)).toEqual(bare(timeline));
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  test('keeps its length, its steps and its people; every other stint stays unless it is pushed', () => {
    fc.assert(
      fc.property(someMove, fc.boolean(), ({ stint, byS }, pushesLater) => {
        const was = stintOf(timeline, stint);
        const startS = (was?.startS as number) + byS;
        const now = moveStint({ stint, startS, pushesLater })(ground, timeline);
        const moved = stintOf(now, stint);
        expect(moved?.startS).toBe(startS);
        expect(moved?.stepEndsS.map((endS) => endS - startS)).toEqual(was?.stepEndsS.map((endS) => endS - was.startS));
        for (const key of keys) {
          if (key === stint) continue;
          const [a, b] = [stintOf(timeline, key), stintOf(now, key)];
          if (pushesLater) expect(b?.startS).toBeGreaterThanOrEqual(a?.startS as number);
          else expect(b).toEqual(a);
          expect((b?.endS as number) - (b?.startS as number)).toBe((a?.endS as number) - (a?.startS as number));
        }
      }),
      { numRuns: 150, seed: 12 },
    );
  });

  test('onto another of the same person is not hidden: the replay finds it', () => {
    expect(errors(timeline)).toEqual([]);
    const [eva] = timeline.evas;
    const person = [...outside][0] as string;
    const lane = eva?.stints.filter(({ assigned }) => assigned[0] === person) ?? [];
    const [first, second] = lane as [(typeof lane)[0], (typeof lane)[0]];
    const now = moveStint({ stint: second.stint, startS: first.startS + 60, pushesLater: false })(ground, timeline);
    expect(errors(now).length).toBeGreaterThan(0);
    expect(now.evas[0]?.claim.status).toBe('written by hand');
  });
});

test('a stint given away and back is the plan that it was; the replay judges who may do it', () => {
  for (const key of keys) {
    const was = stintOf(timeline, key);
    const from = was?.assigned.find((who) => outside.has(who));
    const to = [...outside].find((who) => who !== from);
    if (from === undefined || to === undefined) continue;
    const there = giveStint({ stint: key, from, to })(ground, timeline);
    expect(stintOf(there, key)?.assigned).toContain(to);
    const back = giveStint({ stint: key, from: to, to: from })(ground, there);
    expect(back.evas.map(({ stints, moves }) => ({ stints, moves }))).toEqual(
      timeline.evas.map(({ stints, moves }) => ({ stints, moves })),
    );
  }
});

describe('a move put in by hand', () => {
  const detours = timeline.evas.flatMap((eva) =>
    eva.moves
      .filter(({ who }) => outside.has(who))
      .flatMap((move) => {
        const next = eva.stints.find(({ startS, assigned }) => assigned.includes(move.who) && startS >= move.endS);
        const by = campaign.vehicle.places.find(
          ({ id, keepOut }) => !keepOut && id !== move.from && id !== move.to,
        )?.id;
        const stint = campaign.tasks.flatMap((task) => task.stints).find(({ key }) => key === next?.stint);
        // Some come for a part of a stint: those begin it elsewhere.
        const isTo = stint?.roles[next?.assigned.indexOf(move.who) ?? -1]?.at === move.to;
        return next === undefined || by === undefined || !isTo ? [] : [{ eva: eva.eva, move, stint: next.stint, by }];
      }),
  );

  test('leads over the place, takes the time of both ways, and is gone again when it is taken out', () => {
    expect(detours.length).toBeGreaterThan(5);
    for (const { eva, move, stint, by } of detours) {
      const led = insertMove({ stint, person: move.who, by })(ground, timeline);
      const now = led.evas.find((one) => one.eva === eva)?.moves.filter(({ who }) => who === move.who) ?? [];
      // A long way round may run into what follows; the replay says so, the two legs stand all the same.
      const leg = now.find(({ from, to, startS }) => from === move.from && to === by && startS === move.startS);
      expect(leg).toBeDefined();
      expect(now.some(({ from, to, startS }) => from === by && to === move.to && startS === leg?.endS)).toBe(true);
      const back = insertMove({ stint, person: move.who, by: null })(ground, led);
      expect(back.evas.map(({ moves }) => moves)).toEqual(timeline.evas.map(({ moves }) => moves));
    }
  });

  test('stays when another stint of the same person is moved', () => {
    const [first] = detours;
    if (first === undefined) throw new Error('the demo has moves');
    const led = insertMove({ stint: first.stint, person: first.move.who, by: first.by })(ground, timeline);
    const other = led.evas
      .find(({ eva }) => eva === first.eva)
      ?.stints.findLast(({ assigned, stint }) => assigned.includes(first.move.who) && stint !== first.stint);
    const moved = moveStint({ stint: other?.stint ?? '', startS: (other?.startS ?? 0) + 600, pushesLater: false })(
      ground,
      led,
    );
    const places = (line: typeof timeline) =>
      line.evas
        .find(({ eva }) => eva === first.eva)
        ?.moves.filter(({ who }) => who === first.move.who)
        .map(({ to }) => to);
    expect(places(moved)).toEqual(places(led));
  });
});
