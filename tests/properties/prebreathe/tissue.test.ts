import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between } from '@handrail/quantity/sourced-value';
import { breakPayback } from '@handrail/eva/prebreathe/break-payback';
import type { PrebreatheStage } from '@handrail/eva/prebreathe/prebreathe-protocol';
import { runPrebreathe } from '@handrail/eva/prebreathe/run-prebreathe';
import type { TissueModel } from '@handrail/eva/prebreathe/tissue-model';
import { rateConstantPerS, timeToTensionS, tissueNitrogenPa } from '@handrail/eva/prebreathe/tissue-nitrogen';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const halfTime = real(60, 60_000);

const stages = fc
  .array(
    fc.record({
      pressurePa: real(30_000, 110_000),
      oxygenFraction: real(0.2, 1),
      durationS: fc.integer({ min: 0, max: 20_000 }),
      role: fc.constantFrom('oxygen' as const, 'hold' as const, 'break' as const),
      exerciseVo2: fc.option(real(0, 40)),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((parts) =>
    parts.map(
      (part, i): PrebreatheStage => ({
        title: `stage ${i}`,
        role: part.role,
        startPressurePa: parts[i - 1]?.pressurePa ?? part.pressurePa,
        endPressurePa: part.pressurePa,
        oxygenFraction: part.oxygenFraction,
        durationS: part.durationS,
        exerciseVo2: part.exerciseVo2,
      }),
    ),
  )
  // A pressure change within seconds is a slam, which the engine refuses as out of range: give every change a minute.
  .map((all) => all.map((stage) => ({ ...stage, durationS: stage.durationS + 60 })));

const model = fc
  .record({
    halfTimes: fc.array(halfTime, { minLength: 1, maxLength: 4 }),
    start: real(0, 90_000),
    limit: real(0.8, 3),
  })
  .map(
    ({ halfTimes, start, limit }): TissueModel => ({
      compartments: halfTimes.map((h, i) => ({
        id: `c${i}`,
        halfTimeS: between(h, h, h, 'drawn'),
        startNitrogenPa: between(start, start, start, 'drawn'),
      })),
      vapourPa: 0,
      suitPressurePa: 29_600,
      ratioLimit: between(limit, limit, limit, 'drawn'),
      comparedDecimals: null,
      exerciseRatePerSPerVo2: between(1e-6, 1e-6, 1e-6, 'drawn'),
    }),
  );

describe('tissue nitrogen', () => {
  it('of a stay cut in two is that of the whole stay', () => {
    fc.assert(
      fc.property(
        real(0, 100_000),
        real(30_000, 100_000),
        real(-2, 2),
        real(1, 9000),
        real(0, 1),
        halfTime,
        (start, gas, ramp, t, cut, h) => {
          const k = rateConstantPerS(h);
          const whole = tissueNitrogenPa(start, gas, ramp, t, k);
          const half = tissueNitrogenPa(start, gas, ramp, t * cut, k);
          fc.pre(gas + ramp * t * cut >= 0 && half >= 0);
          const rest = tissueNitrogenPa(half, gas + ramp * t * cut, ramp, t * (1 - cut), k);
          expect(Math.abs(rest - whole)).toBeLessThan(1e-5);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('stays between what it was and the extremes of what is breathed', () => {
    fc.assert(
      fc.property(stages, model, (all, tissues) => {
        const { ends, ratio } = runPrebreathe(all, tissues);
        const top = Math.max(
          ...all.flatMap((s) => [s.startPressurePa, s.endPressurePa].map((p) => p * (1 - s.oxygenFraction))),
        );
        const start = tissues.compartments[0]?.startNitrogenPa.likely ?? 0;
        for (const { tissuePa } of ends) {
          for (const tension of tissuePa) {
            expect(tension).toBeGreaterThanOrEqual(-1e-6);
            expect(tension).toBeLessThanOrEqual(Math.max(top, start) + 1e-6);
          }
        }
        expect(Number.isFinite(ratio)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('is at its target after the time that was asked for it', () => {
    fc.assert(
      fc.property(real(0, 100_000), real(0, 60_000), real(100, 80_000), halfTime, (start, gas, target, h) => {
        const k = rateConstantPerS(h);
        const needed = timeToTensionS(start, gas, target, k);
        if (needed === null) expect(gas).toBeGreaterThanOrEqual(target);
        else if (needed === 0) expect(start).toBeLessThanOrEqual(target);
        else if (needed < 30 * 86_400) expect(tissueNitrogenPa(start, gas, 0, needed, k)).toBeCloseTo(target, 3);
      }),
      { numRuns: 500 },
    );
  });

  it('only falls with more oxygen, and the margin only grows', () => {
    fc.assert(
      fc.property(stages, model, real(60, 20_000), (all, tissues, moreS) => {
        const last = all.at(-1)?.endPressurePa ?? 0;
        const more: PrebreatheStage = {
          title: 'more',
          role: 'oxygen',
          startPressurePa: last,
          endPressurePa: last,
          oxygenFraction: 1,
          durationS: moreS,
          exerciseVo2: null,
        };
        const before = runPrebreathe(all, tissues);
        const after = runPrebreathe([...all, more], tissues);
        expect(after.ratio).toBeLessThanOrEqual(before.ratio + 1e-12);
        expect(after.holds || !before.holds).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it('refuses what is out of range, with the range in the message', () => {
    expect(() => rateConstantPerS(1)).toThrow('half-time must be 10 to 1000000 s, got 1 s');
    expect(() => tissueNitrogenPa(Number.NaN, 0, 0, 1, 1e-4)).toThrow(
      'tissue nitrogen must be 0 to 1000000 Pa, got NaN Pa',
    );
    expect(() => breakPayback(-1, { paybackRatio: 2, longestBreakS: 600, source: 'x' })).toThrow(
      'break must be 0 to 86400 s',
    );
  });
});
