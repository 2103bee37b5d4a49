import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';

/** A stretch of steady work. Half-open [startS, endS). */
export interface PowerStretch {
  readonly startS: number;
  readonly endS: number;
  readonly metabolicW: number;
}

/** "No more than `averageW` over any `windowS`": a suit is designed for several of these at once. */
export interface EnvelopeLimit {
  readonly averageW: number;
  readonly windowS: number;
  readonly source: string;
}

export interface EnvelopeUse {
  readonly limit: EnvelopeLimit;
  /** Greatest mean over any window of that length, W. */
  readonly worstAverageW: number;
  /** Where that window starts, PET seconds. */
  readonly startS: number;
  readonly holds: boolean;
}

/**
 * Greatest mean metabolic rate over any window of each limit's length. Exact: the mean of a piecewise constant rate is greatest
 * where an end of the window meets a change of rate. Time outside all stretches counts as no work.
 * @param stretches in order, without overlap
 */
export function metabolicEnvelope(
  stretches: readonly PowerStretch[],
  limits: readonly EnvelopeLimit[],
): readonly EnvelopeUse[] {
  for (let i = 0; i < stretches.length; i++) {
    const { startS, endS, metabolicW } = stretches[i] as PowerStretch;
    requireInRange('metabolic rate', metabolicW, { min: 0, max: 2500, unit: 'W' });
    const previousEndS = i === 0 ? Number.NEGATIVE_INFINITY : (stretches[i - 1] as PowerStretch).endS;
    if (!(endS > startS) || startS < previousEndS) {
      throw new Fault('suit/stretches-out-of-order', `work stretch ${i + 1} must start after the one before and last`, {
        values: { startS, endS, previousEndS },
      });
    }
  }
  return limits.map((limit) => {
    const windowS = requireInRange('envelope window', limit.windowS, { min: 1, max: 86_400, unit: 's' });
    let worst = { averageW: 0, startS: stretches[0]?.startS ?? 0 };
    for (const edge of stretches.flatMap(({ startS, endS }) => [startS, endS, startS - windowS, endS - windowS])) {
      let joules = 0;
      for (const { startS, endS, metabolicW } of stretches) {
        joules += metabolicW * Math.max(0, Math.min(endS, edge + windowS) - Math.max(startS, edge));
      }
      if (joules / windowS > worst.averageW) worst = { averageW: joules / windowS, startS: edge };
    }
    return {
      limit,
      worstAverageW: worst.averageW,
      startS: worst.startS,
      holds: worst.averageW <= limit.averageW * (1 + 1e-12),
    };
  });
}
