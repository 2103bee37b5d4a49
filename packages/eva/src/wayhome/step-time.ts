/**
 * The time of one closing step. `planning` takes the 50th percentile of the kind, `high` the 90th, `high-of-two` the 95th.
 *
 * The 90 % way home adds percentiles of its parts. For one person that is exact if all parts are slow together (one cause: the
 * person, the light, the gloves) and an upper bound for parts that are independent or hang together positively and are not
 * heavier in the tail than the kinds' figures; it is not a bound for parts that balance one another on purpose. Where two people
 * each have something to do, both take the 95th percentiles: whatever their times have to do with each other, both then hold nine
 * times in ten (way-home.ts). Travel,
 * climbing down, hatch passages and closing the hatch count at the slowest that the operator states (`travel-spread`), and at their
 * planning figures where nothing is stated.
 *
 * @checked tests/properties/wayhome/nine-times-in-ten.test.ts
 */
import { durationAt, fitPercentiles } from '../campaign/duration/fit-percentiles.ts';
import type { Campaign, Hardware } from '../campaign/campaign.ts';
import type { Kind, Verb } from '../kinds/kind.ts';

export type Basis = 'planning' | 'high' | 'high-of-two';

/** Standard normal deviate of the 95th percentile. @source [AS] table 26.5 (MEMORY) */
const DEVIATE_95 = 1.6448536269514722;
const NINETY_FIFTH = new WeakMap<Verb, number>();

/** Of the curve through the three figures of the kind. */
function ninetyFifth(verb: Verb): number {
  const known = NINETY_FIFTH.get(verb);
  if (known !== undefined) return known;
  const { low, likely, high } = verb.timeS;
  const seconds = durationAt(fitPercentiles({ lowS: low, likelyS: likely, highS: high }), DEVIATE_95);
  NINETY_FIFTH.set(verb, seconds);
  return seconds;
}

/** Seconds at this pace; turns are added where the verb counts them. */
export function verbSeconds(verb: Verb, piece: Hardware | null, pace: number, basis: Basis): number {
  const once = basis === 'planning' ? verb.timeS.likely : basis === 'high' ? verb.timeS.high : ninetyFifth(verb);
  return (once + (verb.perTurnS ?? 0) * (piece?.turns ?? 0)) * pace;
}

/** A verb of a kind by its word; 0 s is never assumed: null when the kind does not know it. */
export function verbTime(kind: Kind | undefined, word: string, pace: number, basis: Basis): number | null {
  const verb = kind?.verbs.find((candidate) => candidate.id === word);
  return verb === undefined ? null : verbSeconds(verb, null, pace, basis);
}

/** How many times its planning figure a move, climb, ride or passage takes. */
export function travelFactor({ limits }: Pick<Campaign, 'limits'>, basis: Basis): number {
  return basis !== 'planning' ? (limits.travelSpread?.[1] ?? 1) : 1;
}

/** Which times the steps have, in words. */
export function stepAssumption(basis: Basis): string {
  if (basis === 'planning') return 'steps at the 50th percentile of their kinds';
  if (basis === 'high') return 'steps at the 90th percentile of their kinds';
  return 'steps at the 95th percentile of their kinds: two people have some each, and both are to hold nine times in ten';
}

/** What was assumed of it, in words. */
export function travelAssumption(campaign: Pick<Campaign, 'limits'>, basis: Basis): string {
  const factor = travelFactor(campaign, basis);
  const what = 'travel, hatch passages and closing the hatch at';
  return factor === 1
    ? `${what} their planning figures`
    : `${what} ${factor} times their planning figures, the slowest stated`;
}
