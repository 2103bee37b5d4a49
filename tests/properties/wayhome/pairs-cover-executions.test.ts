/** Whatever durations within their bounds are drawn, wherever the two stand at once is among the pairs that can stand side by side. */
import type { Segment } from '@handrail/eva/wayhome/segments';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallCase } from './small-case.ts';

const CAMPAIGN = (most: number): string => `
task one rank=1 eva=day {
    stint a who=EV1 at=bay { inspect bay; minutes low=5 likely=8 high=${most} }
    stint b who=EV1 at=tip { inspect tip; minutes low=4 likely=6 high=${most} }
}
task two rank=2 eva=day {
    stint c who=EV2 at=side { inspect side; minutes low=3 likely=5 high=${most} }
    stint d who=EV2 at=side { inspect side; minutes low=6 likely=9 high=${most} }
}
task meet rank=3 eva=day {
    stint last who=EV2 at=side { inspect side; minutes 4; after "one/a" }
}
`;
const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:14-0:22 one/a
EV1 0:22-0:26 bay > tip
EV2 0:15-0:20 two/c
EV2 0:20-0:29 two/d
EV1 0:26-0:32 one/b
EV2 0:29-0:33 meet/last
EV1 0:32-0:40 tip > bay > porch
EV2 0:33-0:38 side > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53
wall 6:00 longest EVA`;

/** Starts no stint before its planned time or its order; travel as planned. Written for this campaign alone. */
function execute(bounds: ReadonlyMap<string, readonly [number, number]>, share: Readonly<Record<string, number>>) {
  const plan: Readonly<Record<string, number>> = { a: 14, c: 15, d: 20, b: 26, last: 29 };
  const length = (id: string): number => {
    const [low, high] = bounds.get(id) as readonly [number, number];
    return low + (high - low) * (share[id] as number);
  };
  const start: Record<string, number> = {};
  const end: Record<string, number> = {};
  const run = (id: string, afterS: number): void => {
    start[id] = Math.max((plan[id] as number) * 60, afterS);
    end[id] = start[id] + length(id);
  };
  run('a', 0);
  run('b', (end['a'] as number) + 240);
  run('c', 0);
  run('d', end['c'] as number);
  run('last', Math.max(end['d'] as number, end['a'] as number));
  return { start, end };
}

describe.each([12, 25])('with stints of up to %i min', (most) => {
  const small = smallCase(CAMPAIGN(most), TIMELINE);
  const pairs = small.progress.network.pairs();
  const bounds = new Map(
    small.campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.id, stint.duration.boundsS] as const)),
  );
  const stintOf = (segment: Segment): string | null => segment.stint?.split('/')[1] ?? null;

  test('no execution leaves them', () => {
    const share = fc.record({ a: unit(), b: unit(), c: unit(), d: unit(), last: unit() });
    fc.assert(
      fc.property(share, fc.constantFrom('a', 'b'), fc.constantFrom('c', 'd', 'last'), (drawn, first, second) => {
        const { start, end } = execute(bounds, drawn);
        const from = Math.max(start[first] as number, start[second] as number);
        const to = Math.min(end[first] as number, end[second] as number);
        fc.pre(from < to - 1);
        const pair = pairs.find((one) => stintOf(one.a) === first && stintOf(one.b) === second);
        expect(pair, `${first} with ${second}`).toBeDefined();
        expect(pair?.fromS).toBeLessThanOrEqual(from + 1e-6);
        expect(pair?.toS).toBeGreaterThanOrEqual(to - 1e-6);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
  test('what an order keeps apart is not among them', () => {
    expect(pairs.some((one) => stintOf(one.a) === 'a' && stintOf(one.b) === 'last')).toBe(false);
    expect(pairs.some((one) => one.a.kind === 'in' && one.b.kind === 'in')).toBe(false);
  });
});

function unit(): fc.Arbitrary<number> {
  return fc.double({ min: 0, max: 1, noNaN: true });
}
