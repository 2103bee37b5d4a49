/** A response of the campaign or of the stock set, read the same way. What a campaign writes under the id of a stock response replaces it. */
import type { Campaign } from '../campaign/campaign.ts';
import { sentenceOf } from '../hardware/describe-states.ts';
import type { Mode } from '../wayhome/way-home-state.ts';
import { type Actor, PREVAIL, type StockResponse } from './define-response.ts';
import { responses as stock } from './responses.generated.ts';

export interface AnyResponse {
  readonly id: string;
  readonly title: string;
  readonly trigger: string;
  readonly from: 'campaign' | 'stock';
  /** Kinds of hardware that it concerns; empty: not tied to one. */
  readonly kinds: readonly string[];
  /** Verbs at which it comes up on a piece of these kinds; empty: at any. */
  readonly verbs: readonly string[];
  /** Only in this stint; null: anywhere. */
  readonly stint: string | null;
  readonly steps: readonly { readonly by: Actor; readonly words: string }[];
  /** null: not stated. */
  readonly timeS: StockResponse['timeS'] | null;
  /** Hardware ids, or kinds of tools. */
  readonly kit: readonly string[];
  readonly outcome: string | null;
  readonly leadsTo: Mode | null;
  readonly armStops: boolean;
  /** How often it comes up, once a use; null: not known. */
  readonly probability: number | null;
  /** When it has not worked: the value of the first aspect that the piece in hand is left in; null: not stated. */
  readonly leavesIt: string | null;
  readonly leaves: readonly { readonly variable: string; readonly value: string }[];
  readonly prevails: string;
}

export const STOCK_RESPONSES: readonly StockResponse[] = stock;

/** Campaign's own first, then the stock set without those that the campaign replaces. */
export function allResponses(campaign: Campaign): readonly AnyResponse[] {
  const own = campaign.responses.map((response): AnyResponse => {
    const kinds = response.appliesTo !== null && 'kind' in response.appliesTo ? [response.appliesTo.kind] : [];
    const replaced = stock.find((one) => one.id === response.id);
    // What is not said anew about a stock response that is replaced stays: a leak leads home, whatever its sentences are.
    const leadsTo = response.leadsTo === 'go-on' ? null : (response.leadsTo ?? replaced?.leadsTo ?? null);
    return {
      id: response.id,
      title: response.title,
      trigger: response.trigger,
      from: 'campaign',
      kinds,
      verbs: replaced?.verbs ?? [],
      stint: response.appliesTo !== null && 'stint' in response.appliesTo ? response.appliesTo.stint : null,
      steps: response.steps.map((step) => ({ by: ACTORS[step.by], words: sentenceOf(step) })),
      timeS:
        response.duration === null
          ? null
          : { low: response.duration.lowS, likely: response.duration.likelyS, high: response.duration.highS },
      kit: response.kit,
      outcome: null,
      leadsTo,
      armStops: replaced?.armStops ?? false,
      probability: response.probability,
      leavesIt: response.leavesIt ?? (replaced?.kinds.join() === kinds.join() ? replaced.leavesIt : null),
      leaves: response.leaves,
      prevails: PREVAIL,
    };
  });
  const replaced = new Set(own.map((response) => response.id));
  const rest = stock
    .filter((response) => !replaced.has(response.id))
    .map(
      (response): AnyResponse => ({
        ...response,
        from: 'stock',
        stint: null,
        steps: response.steps.map(([by, words]) => ({ by, words })),
        probability: null,
        leaves: [],
        prevails: PREVAIL,
      }),
    );
  return [...own, ...rest];
}

const ACTORS = { lead: 'self', partner: 'partner', arm: 'operator' } as const;
