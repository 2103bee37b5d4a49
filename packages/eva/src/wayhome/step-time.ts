/**
 * The time of one closing step. `planning` takes the 50th percentile of the kind, `high` the 90th.
 *
 * The 90 % way home adds the 90th percentiles of its parts. That is exact if all parts are slow together (one cause: the
 * person, the light, the gloves) and an upper bound for parts that are independent or hang together positively and are not
 * heavier in the tail than the kinds' figures; it is not a bound for parts that balance one another on purpose. Travel, climbing
 * down, hatch passages and closing the hatch count at the slowest that the operator states (`travel-spread`) under `high`, and at
 * their planning figures where nothing is stated.
 */
import type { Campaign, Hardware } from '../campaign/campaign.ts';
import type { Kind, Verb } from '../kinds/kind.ts';

export type Basis = 'planning' | 'high';

/** Seconds at this pace; turns are added where the verb counts them. */
export function verbSeconds(verb: Verb, piece: Hardware | null, pace: number, basis: Basis): number {
  const once = basis === 'high' ? verb.timeS.high : verb.timeS.likely;
  return (once + (verb.perTurnS ?? 0) * (piece?.turns ?? 0)) * pace;
}

/** A verb of a kind by its word; 0 s is never assumed: null when the kind does not know it. */
export function verbTime(kind: Kind | undefined, word: string, pace: number, basis: Basis): number | null {
  const verb = kind?.verbs.find((candidate) => candidate.id === word);
  return verb === undefined ? null : verbSeconds(verb, null, pace, basis);
}

/** How many times its planning figure a move, climb, ride or passage takes. */
export function travelFactor({ limits }: Pick<Campaign, 'limits'>, basis: Basis): number {
  return basis === 'high' ? (limits.travelSpread?.[1] ?? 1) : 1;
}

/** What was assumed of it, in words. */
export function travelAssumption(campaign: Pick<Campaign, 'limits'>, basis: Basis): string {
  const factor = travelFactor(campaign, basis);
  const what = 'travel, hatch passages and closing the hatch at';
  return factor === 1
    ? `${what} their planning figures`
    : `${what} ${factor} times their planning figures, the slowest stated`;
}
