/** The stretch of UTC over which the sky is asked for one EVA. */
import type { Campaign, Eva } from '../../campaign/campaign.ts';

/** Before PET 0: pre-breathe, and asking for requests. */
const BEFORE_S = 3600;
/** Assumed length where the EVA states none. */
const LENGTH_S = 8 * 3600;
/** After the end, so that a late egress or a late finish still finds its windows. */
const AFTER_S = 2 * 3600;

export interface EvaSpan {
  readonly eva: Eva;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
}

/** From 1 h before PET 0 to 2 h after the longest end, with the latest egress counted; 8 h of length where none is stated. */
export function evaSpan(eva: Eva): EvaSpan {
  const lengthS = eva.longestS ?? LENGTH_S;
  return {
    eva,
    startUtcMs: eva.egressUtcMs - BEFORE_S * 1000,
    endUtcMs: eva.egressUtcMs + (eva.slipS + lengthS + AFTER_S) * 1000,
  };
}

export function evaSpans(campaign: Campaign): readonly EvaSpan[] {
  return campaign.evas.map(evaSpan).sort((a, b) => a.startUtcMs - b.startUtcMs);
}
