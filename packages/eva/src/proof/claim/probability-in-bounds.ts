/**
 * The chance that every duration of a plan stays within its bounds: each by the distribution through its three figures. With a
 * common pace: all deviates share √ρ of one of them, added up over it by Simpson's rule. One figure for the whole EVA says more
 * of the bounds than of the plan: a plan often holds where one stint runs long.
 */
import { deviateOf, fitPercentiles } from '../../campaign/duration/fit-percentiles.ts';
import { normalProbability } from './normal-probability.ts';

export interface BoundedDuration {
  readonly spread: { readonly lowS: number; readonly likelyS: number; readonly highS: number };
  readonly boundsS: readonly [number, number];
}

/** @param paceShare ρ in [0, 1): the share of the variance that is common to all; 0: independent of each other */
export function probabilityInBounds(durations: readonly BoundedDuration[], paceShare = 0): number {
  const deviates = durations.flatMap(({ spread, boundsS }): (readonly [number, number])[] => {
    const fit = fitPercentiles(spread);
    if (fit.kind === 'fixed') return boundsS[0] <= fit.durationS && fit.durationS <= boundsS[1] ? [] : [[0, 0]];
    return [[deviateOf(fit, boundsS[0]), deviateOf(fit, boundsS[1])]];
  });
  const given = (pace: number): number => {
    const [common, own] = [Math.sqrt(paceShare) * pace, Math.sqrt(1 - paceShare)];
    return deviates.reduce(
      (product, [a, b]) => product * (normalProbability((b - common) / own) - normalProbability((a - common) / own)),
      1,
    );
  };
  if (paceShare === 0) return given(0);
  const [reach, panels] = [8, 800];
  const width = (2 * reach) / panels;
  let sum = 0;
  for (let at = 0; at <= panels; at++) {
    const pace = -reach + at * width;
    const weight = at === 0 || at === panels ? 1 : at % 2 === 1 ? 4 : 2;
    sum += (weight * given(pace) * Math.exp(-(pace * pace) / 2)) / Math.sqrt(2 * Math.PI);
  }
  return (sum * width) / 3;
}
