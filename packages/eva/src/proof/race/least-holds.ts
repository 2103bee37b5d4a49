/**
 * The least set of holds that puts every raced pair in order: one per pair of stints, less those that follow from the rest. Each
 * says: this stint does not start before that one is called done.
 */
import type { AgreedHold } from '../network/network-draft.ts';
import { type Arc, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Race } from './find-races.ts';

interface Order {
  readonly hold: AgreedHold;
  readonly arc: Arc;
}

export function leastHolds(
  network: TemporalNetwork,
  arcs: readonly Arc[],
  races: readonly Race[],
): readonly AgreedHold[] {
  const orders = new Map<string, Order>();
  for (const race of races) {
    const order = orderOf(network, race);
    if (order !== null) orders.set(JSON.stringify(order.hold), order);
  }
  let kept = [...orders.values()];
  for (const order of orders.values()) {
    const rest = kept.filter((one) => one !== order);
    const net = new SimpleNetwork(network.events.length, [...arcs, ...rest.map(({ arc }) => arc)]);
    if (net.consistent && net.least(order.arc.to, order.arc.from) >= 0) kept = rest;
  }
  return kept.map(({ hold }) => hold);
}

/** From stint to stint where that fits the plan; else from step to step. Null where one side is no stint. */
function orderOf(network: TemporalNetwork, { first, second }: Race): Order | null {
  if (first.placed === null || second.placed === null) return null;
  const releases = first.placed.stint.key;
  const waits = second.placed.stint.key;
  const eventOf = (key: string, mark: number): number => network.boundaries.get(key)?.get(mark) as number;
  const whole = first.placed.planned.endS <= second.placed.planned.startS;
  if (whole) {
    const arc = { from: eventOf(waits, 0), to: eventOf(releases, first.placed.steps), weightS: 0 };
    return { hold: { releases, waits }, arc };
  }
  const hold = { releases, waits, releasesSteps: first.toStep, waitsStep: second.fromStep };
  return { hold, arc: { from: second.from, to: first.to, weightS: 0 } };
}
