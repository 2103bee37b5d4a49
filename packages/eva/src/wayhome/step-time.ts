/**
 * The time of one closing step. `planning` takes the 50th percentile of the kind, `high` the 90th.
 *
 * The 90 % way home adds the 90th percentiles of its parts. That is exact if all parts are slow together (one cause: the
 * person, the light, the gloves) and an upper bound for parts that are independent or hang together positively and are not
 * heavier in the tail than the kinds' figures; it is not a bound for parts that balance one another on purpose. Travel, hatch
 * passages and closing the hatch have planning figures only and enter with those, under either basis.
 */
import type { Hardware } from '../campaign/campaign.ts';
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
