import { windowsWherePositive } from '@handrail/eva/sky/find-windows';
import {
  complement,
  contains,
  difference,
  type Interval,
  type Intervals,
  intersection,
  lastingAtLeast,
  padded,
  totalS,
  union,
  windowSet,
} from '@handrail/eva/sky/window-set';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const intervals: fc.Arbitrary<readonly Interval[]> = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 40 }))
    .map(([from, length]): Interval => [from, from + length]),
  { maxLength: 12 },
);
const sets = intervals.map((list) => windowSet(list));
const anyInstant = fc.integer({ min: -5, max: 260 });

describe('window sets', () => {
  it('hold an instant exactly when one of the intervals given does', () => {
    fc.assert(
      fc.property(
        intervals,
        anyInstant,
        (list, t) => contains(windowSet(list), t) === list.some(([from, to]) => from <= t && t < to),
      ),
    );
  });

  it('are disjoint, sorted, without empty or touching intervals, after every operation', () => {
    const wellFormed = (set: Intervals): boolean =>
      set.every(([from, to], k) => from < to && (k === 0 || (set[k - 1] as Interval)[1] < from));
    fc.assert(
      fc.property(sets, sets, fc.integer({ min: -10, max: 10 }), (a, b, pad) =>
        [
          union(a, b),
          intersection(a, b),
          complement(a, 0, 250),
          difference(a, b),
          padded(a, pad / 1000),
          lastingAtLeast(a, 0.01),
        ].every((set) => wellFormed(set)),
      ),
    );
  });

  it('follow the logic of or, and, not, at every instant', () => {
    fc.assert(
      fc.property(sets, sets, fc.integer({ min: 0, max: 249 }), (a, b, t) => {
        const [inA, inB] = [contains(a, t), contains(b, t)];
        expect(contains(union(a, b), t)).toBe(inA || inB);
        expect(contains(intersection(a, b), t)).toBe(inA && inB);
        expect(contains(complement(a, 0, 250), t)).toBe(!inA);
        expect(contains(difference(a, b), t)).toBe(inA && !inB);
      }),
    );
  });

  it('share the time between them: union + intersection = both', () => {
    fc.assert(
      fc.property(
        sets,
        sets,
        (a, b) => Math.abs(totalS(union(a, b)) + totalS(intersection(a, b)) - totalS(a) - totalS(b)) < 1e-9,
      ),
    );
  });

  it('shrink inside and grow outside: padding out and back never loses an instant', () => {
    fc.assert(
      fc.property(
        sets,
        fc.integer({ min: 0, max: 9 }),
        anyInstant,
        (a, pad, t) => !contains(a, t) || contains(padded(padded(a, pad / 1000), -pad / 1000), t),
      ),
    );
  });
});

describe('the search for windows', () => {
  it('finds every crest of a wave over a level, grazing ones too, to its tolerance', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 9600, max: 9999 })),
        fc.integer({ min: 0, max: 6282 }),
        (tenThousandths, milliradians) => {
          const phase = milliradians / 1000;
          const level = tenThousandths / 10_000;
          // Twelve samples a wave; a crest of 0.9999 stands out for only 0.45 % of a wave, less than a tenth of a step.
          const wave = 60_000;
          const found = windowsWherePositive((t) => Math.sin((2 * Math.PI * t) / wave + phase) - level, {
            startUtcMs: 0,
            endUtcMs: 10 * wave,
            stepMs: wave / 12,
            toleranceMs: 0.5,
          });
          const half = (Math.acos(level) / (2 * Math.PI)) * wave;
          const crest = ((Math.PI / 2 - phase) / (2 * Math.PI)) * wave;
          const expected: Interval[] = [];
          for (let k = -1; k <= 12; k++) expected.push([crest + k * wave - half, crest + k * wave + half]);
          const clipped = intersection(windowSet(expected), [[0, 10 * wave]]);
          // A sliver cut off by the very end of the interval may be shorter than the tolerance.
          const real = (set: Intervals): Intervals =>
            set.filter(([from, to]) => to - from > 3 && to > 80 && from < 10 * wave - 80);
          expect(real(found).length).toBe(real(clipped).length);
          for (const [k, window] of real(found).entries()) {
            expect(Math.abs(window[0] - (real(clipped)[k]?.[0] ?? Number.NaN))).toBeLessThan(1);
            expect(Math.abs(window[1] - (real(clipped)[k]?.[1] ?? Number.NaN))).toBeLessThan(1);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });
});
