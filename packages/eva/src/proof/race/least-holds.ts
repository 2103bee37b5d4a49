/**
 * The least set of holds that puts every raced pair in order: one per pair of stints, less those that follow from the rest. Each
 * says: this stint does not start before that one is called done.
 */
import type { AgreedHold } from '../network/network-draft.ts';
import { type Arc, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Race } from './find-races.ts';

export interface Order {
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

/**
 * From stint to stint where that fits the plan; else from step to step; a way is over when the work that it leads to begins. Null
 * where one side is no work of the crew, or nothing follows a way that could be called.
 */
export function orderOf(network: TemporalNetwork, { first, second }: Race): Order | null {
  const releases = first.placed?.stint.key ?? first.way?.last ?? first.way?.next ?? null;
  const waits = second.placed?.stint.key ?? second.way?.next ?? second.way?.last ?? null;
  if (releases === null || waits === null) return null;
  const eventOf = (key: string, mark: number): number => network.boundaries.get(key)?.get(mark) as number;
  const waitsWay = second.way === null ? {} : { waitsWayOf: second.way.who };
  if (first.way !== null && first.way.last !== null) {
    const hold = { releases, waits, releasesWayOf: first.way.who, waitsStep: second.fromStep, ...waitsWay };
    return { hold, arc: { from: second.from, to: first.to, weightS: 0 } };
  }
  if (first.way !== null) {
    const hold = { releases, waits, releasesSteps: 0, waitsStep: second.fromStep, ...waitsWay };
    return { hold, arc: { from: second.from, to: eventOf(releases, 0), weightS: 0 } };
  }
  const startS = second.placed?.planned.startS ?? second.fromS;
  if ((first.placed?.planned.endS ?? Number.POSITIVE_INFINITY) <= startS) {
    const from = second.way === null ? eventOf(waits, 0) : second.from;
    return {
      hold: { releases, waits, ...waitsWay },
      arc: { from, to: eventOf(releases, first.placed?.steps ?? 0), weightS: 0 },
    };
  }
  const hold = { releases, waits, releasesSteps: first.toStep, waitsStep: second.fromStep, ...waitsWay };
  return { hold, arc: { from: second.from, to: first.to, weightS: 0 } };
}
