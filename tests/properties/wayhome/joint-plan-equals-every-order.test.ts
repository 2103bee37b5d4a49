/** The joint plan against everything that there is to choose, tried one by one: who does what, in which order, from which end of a rail, who goes in first. */
import type { Job } from '@handrail/eva/wayhome/closing-jobs';
import { jointPlan, type Walker } from '@handrail/eva/wayhome/joint-plan';
import type { Start } from '@handrail/eva/wayhome/way-home-state';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';

const PLACES = ['hatch', 'p1', 'p2', 'p3', 'p4'] as const;

/** Distances on a line: they keep the triangle, as travel of one load class does. */
function walker(
  person: string,
  pace: number,
  starts: readonly Start[],
  passageS: number,
  at: readonly number[],
): Walker {
  const travelS = (from: string, to: string): number =>
    Math.abs((at[PLACES.indexOf(from as never)] ?? 0) - (at[PLACES.indexOf(to as never)] ?? 0)) * pace;
  return { person, pace, starts, firstS: 0, travelS, passageS, inHatch: false };
}

function permutations<T>(list: readonly T[]): T[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((one, at) =>
    permutations([...list.slice(0, at), ...list.slice(at + 1)]).map((rest) => [one, ...rest]),
  );
}

function walk(who: Walker, start: Start, jobs: readonly Job[]): number {
  let t = start.delayS;
  let at = start.place;
  let held = true;
  const go = (to: string): void => {
    if (held) {
      t += start.leaveS;
      at = start.exit;
      held = false;
    }
    t += who.travelS(at, to) as number;
    at = to;
  };
  for (const job of jobs) {
    if (job.place !== at) go(job.place as string);
    if (t < job.releaseS) t = job.releaseS;
    t += job.durationS * who.pace;
    if (t > job.deadlineS) return Number.POSITIVE_INFINITY;
  }
  go('hatch');
  return t;
}

function everyWay(walkers: readonly Walker[], jobs: readonly Job[], closeS: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let split = 0; split < 2 ** jobs.length; split++) {
    const mine = walkers.map((_, index) => jobs.filter((_job, at) => ((split >> at) & 1) === index));
    if (mine.some((list, index) => list.some((job) => !job.by.includes(walkers[index]?.person ?? '')))) continue;
    const arrivals = walkers.map((who, index) =>
      Math.min(...who.starts.flatMap((start) => permutations(mine[index] ?? []).map((list) => walk(who, start, list)))),
    );
    const [x = 0, y = 0] = arrivals;
    const [px = 0, py = 0] = walkers.map((who) => who.passageS);
    least = Math.min(least, Math.max(x + px, y) + py + closeS, Math.max(y + py, x) + px + closeS);
  }
  return least;
}

const start = fc.record({
  place: fc.constantFrom(...PLACES.slice(1)),
  exit: fc.constantFrom(...PLACES.slice(1)),
  delayS: fc.integer({ min: 0, max: 120 }),
  delayWords: fc.constant(null),
  leaveS: fc.integer({ min: 0, max: 300 }),
  leaveWords: fc.constant(null),
});
const job = fc.record({
  id: fc.uuid(),
  place: fc.constantFrom(...PLACES.slice(1)),
  by: fc.constantFrom(['A', 'B'], ['A', 'B'], ['A'], ['B']),
  durationS: fc.integer({ min: 10, max: 900 }),
  releaseS: fc.constantFrom(0, 0, 400, 1500),
  deadlineS: fc.constantFrom(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 1200, 2500),
  clocks: fc.constant([]),
  words: fc.constant('close it'),
  verbs: fc.constant([]),
  openedBy: fc.constant([]),
  pieces: fc.constant([]),
});

test('no assignment, order, end of a rail or order at the hatch is quicker than the joint plan, and none keeps the deadlines where it is none', () => {
  let late = 0;
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 5, maxLength: 5 }),
      fc.tuple(fc.array(start, { minLength: 1, maxLength: 2 }), fc.array(start, { minLength: 1, maxLength: 2 })),
      fc.tuple(fc.constantFrom(1, 1.2), fc.constantFrom(1, 0.9)),
      fc.array(job, { maxLength: 5 }),
      fc.integer({ min: 0, max: 600 }),
      (at, starts, paces, jobs, closeS) => {
        const walkers = [walker('A', paces[0], starts[0], 360, at), walker('B', paces[1], starts[1], 300, at)];
        const plan = jointPlan(walkers, jobs, 'hatch', closeS);
        const least = everyWay(walkers, jobs, closeS);
        if (least === Number.POSITIVE_INFINITY) {
          late++;
          expect(plan).toBeNull();
          return;
        }
        expect(plan?.proved).toBe(true);
        expect(plan?.bothInS).toBeCloseTo(least, 6);
      },
    ),
    { numRuns: 400, seed: 11 },
  );
  expect(late).toBeGreaterThan(20);
});

test('with more jobs than are tried one by one the plan says that it is an upper bound, and is one', () => {
  fc.assert(
    fc.property(fc.array(job, { minLength: 9, maxLength: 10 }), (drawn) => {
      const jobs = drawn.map((one) => ({ ...one, deadlineS: Number.POSITIVE_INFINITY }));
      const walkers = ['A', 'B'].map((person) =>
        walker(
          person,
          1,
          [{ place: 'p1', exit: 'p1', delayS: 0, delayWords: null, leaveS: 60, leaveWords: null }],
          300,
          [0, 100, 250, 400, 700],
        ),
      );
      const plan = jointPlan(walkers, jobs, 'hatch', 0);
      const few = jointPlan(walkers, jobs.slice(0, 5), 'hatch', 0);
      expect(plan?.proved).toBe(false);
      // Fewer jobs never take longer than an upper bound of more of them.
      expect(plan?.bothInS ?? 0).toBeGreaterThanOrEqual((few?.bothInS ?? 0) - 1e-6);
      expect(new Set(plan?.chains.flatMap((chain) => chain.jobs.flatMap((one) => one.id.split('+')))).size).toBe(
        jobs.length,
      );
    }),
    { numRuns: 40, seed: 12 },
  );
});
