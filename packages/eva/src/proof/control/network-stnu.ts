/** The network of a plan in the terms of the decision: links by number, lanes as bits. */
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Stnu } from './stnu.ts';

/** Lanes beyond this many share the last bit, which only makes them see each other at once. */
const MOST_LANES = 30;

export function networkStnu(network: TemporalNetwork): Stnu {
  const bits = new Map(network.lanes.map((lane, index) => [lane, 1 << Math.min(index, MOST_LANES)]));
  return {
    events: network.events.length,
    requirements: network.requirements,
    contingents: network.contingents,
    lanes: network.events.map(({ lanes }) => lanes.reduce((mask, lane) => mask | (bits.get(lane) ?? 0), 0)),
  };
}
