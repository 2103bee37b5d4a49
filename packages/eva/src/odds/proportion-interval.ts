import { requireInRange } from '@handrail/quantity/in-range';
import { incompleteBeta } from './incomplete-beta.ts';
import { normalQuantile } from './normal-quantile.ts';

/** `successes` out of `trials`, and the interval in which the true chance is believed to lie. */
export interface ProportionInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval for a chance that was counted: near its stated confidence on average, never outside 0 to 1, sensible at 0 and
 * at all. For error bars of simulated chances.
 * @param successes whole, 0 to `trials`
 * @param trials whole, 1 to 1e7
 * @param confidence two-sided, e.g. 0.95
 * @source [WILSON27]; without continuity correction, method 3 of [NEWCOMBE98]
 * @checked tests/reference/odds/proportion-interval.test.ts
 */
export function wilsonInterval(successes: number, trials: number, confidence: number): ProportionInterval {
  requireCounts(successes, trials);
  const z = normalQuantile(
    0.5 + requireInRange('confidence', confidence, { min: 0.01, max: 0.9999999, unit: '1' }) / 2,
  );
  const share = successes / trials;
  const spread = z * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  const centre = share + (z * z) / (2 * trials);
  const scale = 1 + (z * z) / trials;
  return {
    share,
    // At the ends the bound is the share itself; rounding would leave 1e-18 of it.
    low: successes === 0 ? 0 : Math.max(0, (centre - spread) / scale),
    high: successes === trials ? 1 : Math.min(1, (centre + spread) / scale),
  };
}

/**
 * The exact (Clopper–Pearson) interval: each side leaves out at most `(1 − confidence) / 2`. Wider than Wilson's; for claims that must not
 * be too bold, such as a gate. For a one-sided 95 % bound on each side give 0.90.
 * @param confidence two-sided
 * @source [CP34]; beta form as in [NEWCOMBE98] method 5
 * @checked tests/reference/odds/proportion-interval.test.ts
 */
export function exactInterval(successes: number, trials: number, confidence: number): ProportionInterval {
  requireCounts(successes, trials);
  const tail = (1 - requireInRange('confidence', confidence, { min: 0.01, max: 0.9999999, unit: '1' })) / 2;
  return {
    share: successes / trials,
    low: successes === 0 ? 0 : betaQuantile(tail, successes, trials - successes + 1),
    high: successes === trials ? 1 : betaQuantile(1 - tail, successes + 1, trials - successes),
  };
}

/** Bisection: the function is monotone, and 60 halvings leave less than 1e-18. */
function betaQuantile(probability: number, a: number, b: number): number {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (incompleteBeta(middle, a, b) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function requireCounts(successes: number, trials: number): void {
  requireInRange('trials', trials, { min: 1, max: 1e7, unit: '1' });
  requireInRange('successes', successes, { min: 0, max: trials, unit: '1' });
}
