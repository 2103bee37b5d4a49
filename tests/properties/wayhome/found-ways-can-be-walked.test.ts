/** Every way home found in drawn cases is walked by a second, small walker; and what may not be shorter is not. */
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallCase, type SmallCase, wayAt } from './small-case.ts';
import { shortest, walkHome } from './walk-home.ts';

// Places and rails of the opening: porch–bay 4 min, bay–tip 4, porch–side 5, bay–up 2, bay–down 2.
const HARDWARE = `
hardware line-bay "Line bay" kind=cable at=bay state=stowed { state retainer none }
hardware line-tip "Line tip" kind=cable at=tip state=stowed { state retainer none }
hardware line-side "Line side" kind=cable at=side state=stowed { state retainer none }
hardware line-up "Line up" kind=cable at=up state=stowed { state retainer none }
limits { restraint-egress "1 min"; home-within "30 min" }
`;
const OUT = 'eva day\nEV1 0:00-0:05 out\nEV2 0:05-0:10 out\n';
/** Each lays out the line where they are; then the way home is asked. */
function laidOut(first: string, second: string): SmallCase {
  const way = (place: string): string =>
    place === 'tip' || place === 'up' ? `porch > bay > ${place}` : `porch > ${place}`;
  return smallCase(
    `${HARDWARE}
task one rank=1 eva=day { stint lay who=EV1 at=${first} { lay line-${first}; report } }
task two rank=2 eva=day { stint lay who=EV2 at=${second} { lay line-${second}; report } }
`,
    `${OUT}EV1 0:10-0:20 ${way(first)}
EV2 0:10-0:20 ${way(second)}
EV1 0:20-0:30 one/lay
steps 0:28 0:30
EV2 0:20-0:30 two/lay
steps 0:28 0:30
EV1 0:30-0:40 ${way(first).split(' > ').reverse().join(' > ')}
EV2 0:30-0:40 ${way(second).split(' > ').reverse().join(' > ')}
EV2 0:45-0:50 in
EV1 0:50-0:55 in
hatch 0:55-1:00
wall 6:00 longest EVA`,
  );
}
const safe = (kind: string, value: string): boolean => kind !== 'cable' || value !== 'laid';

describe.each(['bay', 'tip', 'side', 'up'])('EV1 at %s', (first) => {
  test.each(['bay', 'tip', 'side', 'up'].filter((place) => place !== first))(
    'EV2 at %s: the plan can be walked',
    (second) => {
      const small = laidOut(first, second);
      for (const basis of ['planning', 'high'] as const) {
        for (const [petS, open] of [
          [20 * 60, []],
          [29 * 60, [first, second]],
        ] as const) {
          const plan = wayAt(small, petS, { basis });
          expect(plan.totalS).not.toBeNull();
          const begin = {
            at: new Map([
              ['EV1', first],
              ['EV2', second],
            ]),
            open: new Map(open.map((place) => [`line-${place}`, 'laid'] as const)),
          };
          expect(walkHome(small.campaign, plan, begin, safe)).toEqual([]);
          expect(plan.jobs.map((job) => job.id).sort()).toEqual(open.map((place) => `line-${place}`).sort());
        }
      }
    },
  );
});

test('with nothing open the way home is travel and hatch, no more', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('bay', 'tip', 'side', 'up'),
      fc.constantFrom('bay', 'tip', 'side', 'up'),
      (first, second) => {
        fc.pre(first !== second);
        const small = laidOut(first, second);
        const plan = wayAt(small, 20 * 60);
        const [x, y] = [shortest(small.campaign, first, 'porch'), shortest(small.campaign, second, 'porch')];
        // Two passages of 5 min each and 5 min to close the hatch.
        expect(plan.totalS).toBe(Math.max(Math.min(x, y) + 300, Math.max(x, y)) + 300 + 300);
      },
    ),
    { numRuns: 12, seed: 3 },
  );
});

test('what is open never makes the way shorter, and high times never shorten it', () => {
  for (const [first, second] of [
    ['bay', 'side'],
    ['tip', 'up'],
  ] as const) {
    const small = laidOut(first, second);
    const total = (way: WayHome): number => way.totalS as number;
    expect(total(wayAt(small, 29 * 60))).toBeGreaterThan(total(wayAt(small, 20 * 60)));
    expect(total(wayAt(small, 29 * 60, { basis: 'high' }))).toBeGreaterThan(total(wayAt(small, 29 * 60)));
    expect(total(wayAt(small, 29 * 60, { mode: 'abort' }))).toBeLessThanOrEqual(total(wayAt(small, 29 * 60)));
  }
});
