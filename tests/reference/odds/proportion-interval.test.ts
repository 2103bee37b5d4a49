import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { incompleteBeta, logGamma } from '@handrail/eva/odds/incomplete-beta';
import { normalQuantile } from '@handrail/eva/odds/normal-quantile';
import { exactInterval, wilsonInterval } from '@handrail/eva/odds/proportion-interval';

describe('the score interval', () => {
  // Accuracy 5e-5, the printed digits.
  it.each([
    [81, 263, 0.2553, 0.3662], // 95 % [NEWCOMBE98] Table I
    [15, 148, 0.0624, 0.1605], // 95 % [NEWCOMBE98] Table I
    [0, 20, 0, 0.1611], // 95 % [NEWCOMBE98] Table I
    [1, 29, 0.0061, 0.1718], // 95 % [NEWCOMBE98] Table I
  ])('for %i of %i is %f to %f', (successes, trials, low, high) => {
    const interval = wilsonInterval(successes, trials, 0.95);
    expect(Math.abs(interval.low - low)).toBeLessThan(5.1e-5);
    expect(Math.abs(interval.high - high)).toBeLessThan(5.1e-5);
  });

  it('for all of 20 mirrors none of 20', () => {
    expect(wilsonInterval(20, 20, 0.95).high).toBe(1);
    expect(Math.abs(wilsonInterval(20, 20, 0.95).low - (1 - 0.1611))).toBeLessThan(5.1e-5); // [NEWCOMBE98] Table I, mirrored
    expect(wilsonInterval(0, 20, 0.95).low).toBe(0);
  });

  it('ends where the observed share is just z standard errors away', () => {
    // Second method: the definition, solved by bisection.
    const interval = wilsonInterval(7, 31, 0.9);
    const z = 1.6448536269514722; // 95th percentile of the normal [AS241]
    const distance = (chance: number) => Math.abs(7 / 31 - chance) / Math.sqrt((chance * (1 - chance)) / 31);
    expect(distance(interval.low)).toBeCloseTo(z, 9);
    expect(distance(interval.high)).toBeCloseTo(z, 9);
  });
});

describe('the exact interval', () => {
  it.each([
    [6, 28, 0.9, 0.098, 0.38, 5e-4], // one-sided 95 % each side, printed 9.8–38.0 % [E14] Table 1
    [2, 47, 0.9, 0.007, 0.128, 7e-4], // printed 0.7–12.8 %: the lower end, 0.76 %, is cut and not rounded there [E14] Table 1
    [0, 45, 0.9, 0, 0.065, 7e-4], // printed 0–6.5 %; 6.44 % exactly [E14] Table 1
  ])('for %i of %i at %f meets the printed table', (successes, trials, confidence, low, high, accuracy) => {
    const interval = exactInterval(successes, trials, confidence);
    expect(Math.abs(interval.low - low)).toBeLessThan(accuracy);
    expect(Math.abs(interval.high - high)).toBeLessThan(accuracy);
  });

  // Another program's beta quantiles; accuracy 1e-9.
  it.each([
    [6, 28, 0.9, 0.09768235475349937, 0.3796701854013114], // [SCIPY] beta.ppf
    [2, 47, 0.9, 0.007613546202934588, 0.12796053954565068], // [SCIPY] beta.ppf
    [0, 45, 0.9, 0, 0.06440428880778348], // [SCIPY] beta.ppf
    [0, 145, 0.95, 0, 0.025119664131802152], // [SCIPY] beta.ppf
    [0, 4, 0.95, 0, 0.6023646356164746], // [SCIPY] beta.ppf
    [999, 1000, 0.95, 0.9944410757201734, 0.9999746825125088], // [SCIPY] beta.ppf
    [3, 1_000_000, 0.95, 6.186725501906401e-7, 8.767247788067677e-6], // [SCIPY] beta.ppf
    [50, 50, 0.95, 0.9288782635358024, 1], // [SCIPY] beta.ppf
  ])('for %i of %i at %f is what another program gives', (successes, trials, confidence, low, high) => {
    const interval = exactInterval(successes, trials, confidence);
    expect(Math.abs(interval.low - low)).toBeLessThan(1e-9);
    expect(Math.abs(interval.high - high)).toBeLessThan(1e-9);
  });

  it('leaves out exactly the tail it says, summed term by term', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), (trials, part) => {
        const successes = Math.round(part * trials);
        const { low, high } = exactInterval(successes, trials, 0.95);
        // Second method: binomial sums.
        const atLeast = (chance: number, from: number) => {
          let sum = 0;
          for (let k = from; k <= trials; k++) {
            let term = 1;
            for (let i = 0; i < k; i++) term *= (trials - i) / (i + 1);
            sum += term * chance ** k * (1 - chance) ** (trials - k);
          }
          return sum;
        };
        if (successes > 0) expect(atLeast(low, successes)).toBeCloseTo(0.025, 9);
        if (successes < trials) expect(1 - atLeast(high, successes + 1)).toBeCloseTo(0.025, 9);
        const score = wilsonInterval(successes, trials, 0.95);
        expect(low).toBeLessThanOrEqual(score.share);
        expect(high).toBeGreaterThanOrEqual(score.share);
      }),
      { numRuns: 300 },
    );
  });

  it('refuses more successes than trials', () => {
    expect(() => exactInterval(5, 4, 0.95)).toThrow('successes must be 0 to 4, got 5');
    expect(() => wilsonInterval(0, 0, 0.95)).toThrow('trials must be 1');
  });
});

describe('their parts', () => {
  it.each([
    [0.25, -0.6744897501960817], // [AS241] test value
    [0.001, -3.090232306167813], // [AS241] test value
    [1e-20, -9.262340089798473], // [AS241] test value
    [0.975, 1.959963984540054], // the 1.96 of every table, more digits from [SCIPY] norm.ppf
  ])('the normal quantile at %f is %f', (probability, quantile) => {
    expect(Math.abs(normalQuantile(probability) - quantile)).toBeLessThan(1e-13);
  });

  it('log gamma meets factorials and √π', () => {
    expect(logGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 12);
    expect(logGamma(11)).toBeCloseTo(Math.log(3_628_800), 12);
  });

  it('the incomplete beta function is the polynomial that it must be for small whole numbers', () => {
    for (const x of [0, 0.1, 0.37, 0.5, 0.9, 1]) {
      expect(incompleteBeta(x, 1, 1)).toBeCloseTo(x, 14);
      expect(incompleteBeta(x, 2, 2)).toBeCloseTo(3 * x ** 2 - 2 * x ** 3, 14);
      expect(incompleteBeta(x, 3, 1)).toBeCloseTo(x ** 3, 14);
    }
  });
});
