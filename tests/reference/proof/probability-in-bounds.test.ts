/** @source [AS] Abramowitz & Stegun, *Handbook of Mathematical Functions*, table 26.1 (normal probability function), table 26.5 (MEMORY). */
import { normalProbability } from '@handrail/eva/proof/claim/normal-probability';
import { probabilityInBounds } from '@handrail/eva/proof/claim/probability-in-bounds';
import { describe, expect, it } from 'vitest';

const spread = { lowS: 840, likelyS: 1080, highS: 1620 };
const stated = { spread, boundsS: [840, 1620] as const };

describe('the normal probability', () => {
  it.each([
    [0, 0.5],
    [1, 0.8413447461],
    [1.96, 0.9750021049],
    [2.5, 0.9937903347],
    [-3, 0.001349898],
    [1.2815515655, 0.9],
  ])('at %f is that of table 26.1 [AS]', (x, p) => {
    expect(normalProbability(x)).toBeCloseTo(p, 9);
  });
});

describe('the chance that durations stay within bounds', () => {
  it('is 0.8 between the 10th and the 90th percentile, whatever the distribution', () => {
    expect(probabilityInBounds([stated])).toBeCloseTo(0.8, 9);
    expect(
      probabilityInBounds([{ spread: { lowS: 900, likelyS: 1000, highS: 1050 }, boundsS: [900, 1050] }]),
    ).toBeCloseTo(0.8, 9);
  });
  it('multiplies where durations have nothing in common', () => {
    expect(probabilityInBounds([stated, stated, stated])).toBeCloseTo(0.512, 9);
  });
  it('is larger for many together where they share a pace, and the same for one', () => {
    expect(probabilityInBounds([stated], 0.5)).toBeCloseTo(0.8, 6);
    const together = probabilityInBounds([stated, stated, stated], 0.5);
    expect(together).toBeGreaterThan(0.52);
    expect(together).toBeLessThan(0.8);
  });
  it('agrees with counting samples of a common pace', () => {
    // A second method: 200 000 draws by the sum of twelve uniforms, seeded.
    let state = 12345;
    const uniform = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((sum, one) => sum + one, -6);
    const limit = 1.2815515655;
    let inside = 0;
    const draws = 100_000;
    for (let draw = 0; draw < draws; draw++) {
      const pace = normal();
      const all = [0, 1, 2].every(() => Math.abs(Math.sqrt(0.5) * pace + Math.sqrt(0.5) * normal()) <= limit);
      if (all) inside++;
    }
    // Twelve uniforms are a little light in the tails; 0.01 covers that and the counting error of 0.0015.
    expect(Math.abs(probabilityInBounds([stated, stated, stated], 0.5) - inside / draws)).toBeLessThan(0.01);
  });
  it('counts a duration without spread as in or out', () => {
    const fixed = { lowS: 60, likelyS: 60, highS: 60 };
    expect(probabilityInBounds([{ spread: fixed, boundsS: [60, 60] }])).toBe(1);
    expect(probabilityInBounds([{ spread: fixed, boundsS: [61, 70] }])).toBe(0);
  });
});
