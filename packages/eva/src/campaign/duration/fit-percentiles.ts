/**
 * A distribution through three percentiles. Right-skewed figures take a shifted log-normal, T = shift + exp(μ + σ Z); where no
 * such curve goes through them with a shift of at least 0, a split normal in the log, T = median · exp(σ± Z), with its own
 * width on each side of the median. Both go through the three figures exactly; which one it is stays on the result.
 */
import { Fault } from '@handrail/quantity/fault';

export type DurationFit =
  | { readonly kind: 'shifted-log-normal'; readonly shiftS: number; readonly mu: number; readonly sigma: number }
  | {
      readonly kind: 'split-log-normal';
      readonly medianS: number;
      readonly sigmaLow: number;
      readonly sigmaHigh: number;
    }
  /** All three figures are the same. */
  | { readonly kind: 'fixed'; readonly durationS: number };

/** Standard normal deviate of the 90th percentile; the 10th is its negative. @source [AS] table 26.5, to the digits of a double (MEMORY) */
export const DEVIATE_90 = 1.2815515655446004;

/**
 * @param spread 10th, 50th and 90th percentile, seconds, 0 < low ≤ likely ≤ high
 * @throws Fault `input/band-out-of-order`
 */
export function fitPercentiles(spread: {
  readonly lowS: number;
  readonly likelyS: number;
  readonly highS: number;
}): DurationFit {
  const { lowS, likelyS, highS } = spread;
  if (!(lowS > 0 && lowS <= likelyS && likelyS <= highS && Number.isFinite(highS))) {
    throw new Fault(
      'input/band-out-of-order',
      `percentiles must be 0 < low ≤ likely ≤ high, got ${lowS}, ${likelyS}, ${highS}`,
      {
        values: { lowS, likelyS, highS },
      },
    );
  }
  if (lowS === highS) return { kind: 'fixed', durationS: likelyS };
  const skew = highS + lowS - 2 * likelyS;
  if (skew > 0 && lowS < likelyS) {
    // (likely − shift)² = (low − shift)(high − shift)
    const shiftS = (lowS * highS - likelyS * likelyS) / skew;
    // Where low and likely all but coincide, the curve would have no room below the median.
    if (shiftS >= 0 && lowS - shiftS > 1e-9 * likelyS) {
      return {
        kind: 'shifted-log-normal',
        shiftS,
        mu: Math.log(likelyS - shiftS),
        sigma: Math.log((highS - shiftS) / (likelyS - shiftS)) / DEVIATE_90,
      };
    }
  }
  return {
    kind: 'split-log-normal',
    medianS: likelyS,
    sigmaLow: Math.log(likelyS / lowS) / DEVIATE_90,
    sigmaHigh: Math.log(highS / likelyS) / DEVIATE_90,
  };
}

/** Duration, seconds, at a standard normal deviate: 0 gives the median, `DEVIATE_90` the 90th percentile. */
export function durationAt(fit: DurationFit, deviate: number): number {
  switch (fit.kind) {
    case 'fixed':
      return fit.durationS;
    case 'shifted-log-normal':
      return fit.shiftS + Math.exp(fit.mu + fit.sigma * deviate);
    default:
      return fit.medianS * Math.exp((deviate < 0 ? fit.sigmaLow : fit.sigmaHigh) * deviate);
  }
}

/**
 * The inverse: the standard normal deviate of a duration. −∞ and +∞ where nothing is that short or that long; 0 at the one
 * value of a fixed duration or of a side without width.
 */
export function deviateOf(fit: DurationFit, durationS: number): number {
  const against = (reference: number): number =>
    durationS === reference ? 0 : durationS < reference ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  switch (fit.kind) {
    case 'fixed':
      return against(fit.durationS);
    case 'shifted-log-normal':
      if (durationS <= fit.shiftS) return Number.NEGATIVE_INFINITY;
      return (Math.log(durationS - fit.shiftS) - fit.mu) / fit.sigma;
    default: {
      const sigma = durationS < fit.medianS ? fit.sigmaLow : fit.sigmaHigh;
      if (sigma === 0) return against(fit.medianS);
      return durationS <= 0 ? Number.NEGATIVE_INFINITY : Math.log(durationS / fit.medianS) / sigma;
    }
  }
}
