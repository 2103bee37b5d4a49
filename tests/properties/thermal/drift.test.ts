import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between } from '@handrail/quantity/sourced-value';
import { touchVerdicts } from '@handrail/eva/thermal/touch-temperature';
import { lumpedTemperatureK, timeToTemperatureS, unpoweredLimit } from '@handrail/eva/thermal/unpowered-unit';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('heat and cold', () => {
  it('stays between start and surroundings, and is at the limit after the time asked for', () => {
    fc.assert(
      fc.property(
        real(100, 400),
        real(100, 400),
        real(60, 1e5),
        real(0, 1e6),
        real(100, 400),
        (start, around, tau, t, limit) => {
          const temperature = lumpedTemperatureK(start, around, tau, t);
          expect(temperature).toBeGreaterThanOrEqual(Math.min(start, around) - 1e-9);
          expect(temperature).toBeLessThanOrEqual(Math.max(start, around) + 1e-9);
          const atS = timeToTemperatureS(start, around, tau, limit);
          if (atS !== null && atS <= 1e6) expect(lumpedTemperatureK(start, around, tau, atS)).toBeCloseTo(limit, 6);
          if (atS === null) expect((limit - start) * (limit - around)).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('takes the worst of the band: no drawn member of it reaches a limit sooner', () => {
    const unit = fc.record({ a: real(0, 1), b: real(0, 1), c: real(0, 1), cold: real(100, 300), wide: real(0, 150) });
    fc.assert(
      fc.property(unit, ({ a, b, c, cold, wide }) => {
        const start = [280, 290, 300] as const;
        const around = [cold, cold + wide / 2, cold + wide] as const;
        const tau = [3000, 4000, 6000] as const;
        const { worstS, likelyS, bestS } = unpoweredLimit({
          kind: 'lumped',
          id: 'drawn',
          startK: between(...start, 'drawn'),
          surroundingsK: between(...around, 'drawn'),
          timeConstantS: between(...tau, 'drawn'),
          lowestK: 260,
          highestK: 320,
        });
        const pick = (band: readonly [number, number, number], at: number) => band[0] + at * (band[2] - band[0]);
        const member = Math.min(
          timeToTemperatureS(pick(start, a), pick(around, b), pick(tau, c), 260) ?? Number.POSITIVE_INFINITY,
          timeToTemperatureS(pick(start, a), pick(around, b), pick(tau, c), 320) ?? Number.POSITIVE_INFINITY,
        );
        const never = Number.POSITIVE_INFINITY;
        expect(member).toBeGreaterThanOrEqual((worstS ?? never) - 1e-6);
        expect(member).toBeLessThanOrEqual((bestS ?? never) + 1e-6);
        expect(worstS ?? never).toBeLessThanOrEqual(likelyS ?? never);
        expect(likelyS ?? never).toBeLessThanOrEqual(bestS ?? never);
      }),
      { numRuns: 500 },
    );
  });

  it('allows a shorter touch wherever it allows a longer one', () => {
    const limits = [
      { contactS: 5, lowestK: 150, highestK: 420, source: 'drawn' },
      { contactS: 30, lowestK: 180, highestK: 390, source: 'drawn' },
      { contactS: null, lowestK: 230, highestK: 335, source: 'drawn' },
    ];
    fc.assert(
      fc.property(real(100, 450), real(0, 100), real(0, 100), real(0, 1), (low, wide, contactS, part) => {
        const of = (s: number) =>
          touchVerdicts(limits, [{ of: 'drawn', surfaceK: { low, high: low + wide }, contactS: s }])[0]?.holds;
        if (of(contactS) === true) expect(of(contactS * part)).toBe(true);
      }),
    );
  });
});
