import { deviateOf, DEVIATE_90, durationAt, fitPercentiles } from '@handrail/eva/campaign/duration/fit-percentiles';
import { sampleQuantile } from '@handrail/eva/campaign/duration/sample-quantile';
import { splitOverSteps } from '@handrail/eva/campaign/duration/split-over-steps';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { defineVerb } from '@handrail/eva/kinds/define-verb';
import { defineKind } from '@handrail/eva/kinds/kind';
import { buildKindsLibrary } from '@handrail/eva/kinds/kinds-library';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const percentiles = fc
  .tuple(
    fc.double({ min: 1, max: 5000, noNaN: true }),
    fc.double({ min: 0, max: 5000, noNaN: true }),
    fc.double({ min: 0, max: 5000, noNaN: true }),
  )
  .map(([low, a, b]) => ({ lowS: low, likelyS: low + a, highS: low + a + b }));

/** Φ by Simpson's rule on the density: a second method that shares nothing with the fit. */
function normalBelow(z: number): number {
  const steps = 2000;
  const width = z / steps;
  let sum = 0;
  for (let at = 0; at <= steps; at++) {
    const weight = at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-0.5 * (at * width) ** 2);
  }
  return 0.5 + (sum * width) / 3 / Math.sqrt(2 * Math.PI);
}

describe('a distribution through three percentiles', () => {
  test('uses the deviate of the 90th percentile', () => {
    expect(normalBelow(DEVIATE_90)).toBeCloseTo(0.9, 10);
  });

  test('goes through all three, whatever they are', () => {
    fc.assert(
      fc.property(percentiles, (spread) => {
        const fit = fitPercentiles(spread);
        const close = (got: number, wanted: number): void =>
          expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-6 * wanted);
        close(durationAt(fit, -DEVIATE_90), spread.lowS);
        close(durationAt(fit, 0), spread.likelyS);
        close(durationAt(fit, DEVIATE_90), spread.highS);
      }),
      { seed: 3, numRuns: 2000 },
    );
  });

  test('never gives a negative time and never falls as the deviate rises', () => {
    fc.assert(
      fc.property(percentiles, (spread) => {
        const fit = fitPercentiles(spread);
        let last = 0;
        for (let z = -6; z <= 6; z += 0.25) {
          const duration = durationAt(fit, z);
          expect(duration).toBeGreaterThanOrEqual(last);
          last = duration;
        }
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  test.each([
    [0, 3, 0.4],
    [120, 5, 0.7],
    [600, 6.2, 0.25],
  ])('finds the shift %d s, μ %d and σ %d that the percentiles were made with', (shiftS, mu, sigma) => {
    const quantile = (z: number): number => shiftS + Math.exp(mu + sigma * z);
    const fit = fitPercentiles({
      lowS: quantile(-DEVIATE_90),
      likelyS: quantile(0),
      highS: quantile(DEVIATE_90),
    });
    // A shift of 0 lies on the border; rounding may put it on either side, and both curves are then the same one.
    if (fit.kind === 'split-log-normal') {
      expect(shiftS).toBe(0);
      expect([fit.sigmaLow, fit.sigmaHigh]).toEqual([expect.closeTo(sigma, 9), expect.closeTo(sigma, 9)]);
    } else {
      expect(fit).toEqual({
        kind: 'shifted-log-normal',
        shiftS: expect.closeTo(shiftS, 6) as number,
        mu: expect.closeTo(mu, 6) as number,
        sigma: expect.closeTo(sigma, 6) as number,
      });
    }
  });

  test('14, 18 and 27 min by hand: shift = (14·27 − 18²)/(14 + 27 − 36) = 10.8 min', () => {
    const fit = fitPercentiles({ lowS: 840, likelyS: 1080, highS: 1620 });
    expect(fit.kind).toBe('shifted-log-normal');
    if (fit.kind === 'shifted-log-normal') expect(fit.shiftS).toBeCloseTo(648, 9);
  });

  test.each([
    ['left-skewed', { lowS: 600, likelyS: 1200, highS: 1500 }],
    ['symmetric', { lowS: 600, likelyS: 900, highS: 1200 }],
    ['so skewed that the shift would be negative', { lowS: 60, likelyS: 120, highS: 200 }],
    ['without a lower side', { lowS: 600, likelyS: 600, highS: 900 }],
  ])('says so when the figures are %s and takes the split curve', (_, spread) => {
    expect(fitPercentiles(spread).kind).toBe('split-log-normal');
  });

  test('is one value when all three are the same', () => {
    expect(fitPercentiles({ lowS: 600, likelyS: 600, highS: 600 })).toEqual({ kind: 'fixed', durationS: 600 });
  });

  test('the deviate of a duration takes it back', () => {
    fc.assert(
      fc.property(percentiles, fc.double({ min: -4, max: 4, noNaN: true }), (spread, z) => {
        const fit = fitPercentiles(spread);
        const back = durationAt(fit, deviateOf(fit, durationAt(fit, z)));
        if (Number.isFinite(back)) expect(back).toBeCloseTo(durationAt(fit, z), 3);
      }),
      { seed: 5, numRuns: 1000 },
    );
  });

  test('refuses figures that are out of order', () => {
    expect(() => fitPercentiles({ lowS: 900, likelyS: 600, highS: 1200 })).toThrow(/low ≤ likely ≤ high/);
  });
});

describe('quantiles of timed runs', () => {
  test('are single runs at the plotting positions (k − 1/3)/(n + 1/3)', () => {
    const runs = [11, 13, 14, 18, 25];
    for (const [at, run] of runs.entries()) {
      expect(sampleQuantile(runs, (at + 1 - 1 / 3) / (runs.length + 1 / 3))).toBeCloseTo(run, 10);
    }
  });

  test('are median-unbiased: the position of run k is within 0.006 of the median of its rank', () => {
    // The rank of run k of n is Beta(k, n + 1 − k); its median by bisection on the binomial sum.
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
    for (const n of [3, 5, 9, 20]) {
      for (let k = 1; k <= n; k++) {
        let low = 0;
        let high = 1;
        for (let step = 0; step < 60; step++) {
          const p = (low + high) / 2;
          let atLeastK = 0;
          for (let j = k; j <= n; j++) atLeastK += choose(n, j) * p ** j * (1 - p) ** (n - j);
          if (atLeastK < 0.5) low = p;
          else high = p;
        }
        expect(Math.abs((k - 1 / 3) / (n + 1 / 3) - low)).toBeLessThan(0.0065);
      }
    }
  });

  test('never claim more than was seen', () => {
    expect([sampleQuantile([20, 30], 0.01), sampleQuantile([20, 30], 0.99), sampleQuantile([25], 0.9)]).toEqual([
      20, 30, 25,
    ]);
  });
});

describe('a planning figure shared out to steps', () => {
  test('adds up exactly, lies on the 10 s grid, and keeps the proportions', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20000 }),
        fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (total, weights) => {
          const shares = splitOverSteps(total, weights);
          expect(shares.reduce((a, b) => a + b, 0)).toBe(total);
          const sum = weights.reduce((a, b) => a + b, 0);
          for (const [at, share] of shares.entries()) {
            const exact = sum > 0 ? (total * (weights[at] as number)) / sum : total / weights.length;
            const last = at === shares.length - 1;
            if (!last) expect(share % 10).toBe(0);
            expect(Math.abs(share - exact)).toBeLessThan(last ? 20 : 20);
            expect(share).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { seed: 6, numRuns: 2000 },
    );
  });

  test('by hand: 10 min over 1 : 2 : 3', () => {
    expect(splitOverSteps(600, [60, 120, 180])).toEqual([100, 200, 300]);
  });

  test('by hand: 100 s over three equal steps puts the odd 10 s on the first', () => {
    expect(splitOverSteps(100, [30, 30, 30])).toEqual([40, 30, 30]);
  });
});

describe('the duration of a stint', () => {
  const crew = defineKind({
    id: 'crew',
    title: 'Crew',
    about: 'For this test.',
    aspects: [],
    carried: false,
    holds: 'nothing',
    verbs: [defineVerb('look', 'Look', [20, 40, 90]), defineVerb('rest', 'Rest', [60, 120, 180])],
    properties: [],
    source: 'test',
  });
  const bolt = defineKind({
    ...crew,
    id: 'bolt',
    verbs: [defineVerb('release', 'Release {object}', [10, 20, 40], { perTurnS: 3 })],
  });
  const library = buildKindsLibrary('standard', '1', [crew, bolt]);
  const durationOf = (inside: string) => {
    const text = `handrail 1\ncampaign c\neva e egress="2031-09-14T11:40:00Z"\nhardware b1 b2 kind=bolt at=EV1 turns=10\ntask t { stint s who=EV1 { ${inside} } }\n`;
    const { campaign, problems } = readCampaign([{ name: 'c.kdl', text }], library);
    expect(problems).toEqual([]);
    const duration = campaign?.tasks[0]?.stints[0]?.duration;
    if (duration === undefined) throw new Error('no duration');
    return { ...duration, evidence: duration.evidence.length, span: null };
  };

  test('one figure is the agreed one, and nothing is known of its spread', () => {
    expect(durationOf('look; rest; minutes 8')).toMatchObject({
      basis: 'stated',
      agreedS: 480,
      spread: null,
      boundsS: [480, 480],
      // 40 : 120 of 480 s
      stepsS: [120, 360],
    });
  });

  test('three figures are the spread and the bounds; the likely one is agreed unless another is', () => {
    expect(durationOf('minutes low=14 likely=18 high=27')).toMatchObject({
      basis: 'three-figures',
      agreedS: 1080,
      spread: { lowS: 840, likelyS: 1080, highS: 1620 },
      boundsS: [840, 1620],
      stepsS: [],
    });
    expect(durationOf('minutes low=14 likely=18 high=27 agreed=20').agreedS).toBe(1200);
  });

  test("without minutes the kinds' figures are summed: two bolts of 10 turns and a look", () => {
    // release: 2 × (10 + 30, 20 + 30, 40 + 30); look: 20, 40, 90.
    expect(durationOf('release b1 b2; look')).toMatchObject({
      basis: 'steps',
      agreedS: 140,
      spread: { lowS: 100, likelyS: 140, highS: 230 },
      boundsS: [100, 230],
      stepsS: [100, 40],
    });
  });

  test('a time written on a sentence replaces its figures', () => {
    expect(durationOf('release b1 b2 minutes=5; look')).toMatchObject({
      agreedS: 340,
      spread: { lowS: 320, likelyS: 340, highS: 390 },
      stepsS: [300, 40],
    });
  });

  test('timed runs give the median, on the grid, and the least and greatest as bounds', () => {
    const got = durationOf('sample 17 where=tank; sample 14 where=rig; sample 21.5 where=tank');
    expect(got).toMatchObject({ basis: 'samples', agreedS: 1020, boundsS: [840, 1290], evidence: 3 });
    expect(got.spread?.likelyS).toBe(1020);
  });

  test('two runs are evidence and no spread', () => {
    expect(durationOf('sample 17 where=tank; sample 14 where=rig')).toMatchObject({
      basis: 'samples',
      agreedS: 930,
      spread: null,
      boundsS: [840, 1020],
    });
  });

  test('minutes come before timed runs, which stay as evidence', () => {
    expect(durationOf('minutes 20; sample 17 where=tank')).toMatchObject({
      basis: 'stated',
      agreedS: 1200,
      evidence: 1,
    });
  });
});
