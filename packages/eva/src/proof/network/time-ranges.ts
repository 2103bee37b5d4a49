import type { NetworkDraft } from './network-draft.ts';
import { arcsOf, SimpleNetwork } from './simple-network.ts';

/** Earliest and latest time of each event, seconds from the stated egress, over all executions; the latest may be Infinity. */
export function timeRanges(
  draft: Pick<NetworkDraft, 'events' | 'requirements' | 'contingents' | 'egressUtc'>,
): readonly (readonly [number, number])[] {
  const net = new SimpleNetwork(draft.events.length, arcsOf(draft));
  if (!net.consistent) return draft.events.map(() => [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  return draft.events.map((_, event) => [net.least(draft.egressUtc, event), net.most(draft.egressUtc, event)]);
}
