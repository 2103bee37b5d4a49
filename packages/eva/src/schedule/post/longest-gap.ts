/** The least time between two instants that orders already posted demand, along chains of intervals that are present together. */
import type { Point } from '@handrail/solver/model/model';
import type { EvaDraft } from '../eva-draft.ts';

/**
 * Longest path over unconditional orders between intervals whose presence is one of `presences`, by relaxing until nothing
 * changes. −∞ is returned as null: no chain leads from one to the other.
 */
export function longestGap(draft: EvaDraft, from: Point, to: Point, presences: ReadonlySet<number>): number | null {
  const { builder } = draft;
  const isThere = (interval: number) => {
    const { presence } = builder.intervalAt(interval);
    return presence === null || presences.has(presence.variable);
  };
  const node = ({ interval, of }: Pick<Point, 'interval' | 'of'>) => interval * 2 + (of === 'end' ? 1 : 0);
  const arcs: [number, number, number][] = [];
  const seen = new Set<number>();
  for (const order of draft.orders) {
    if (!isThere(order.from.interval) || !isThere(order.to.interval)) continue;
    arcs.push([node(order.from), node(order.to), order.lag + order.from.offset - order.to.offset]);
    for (const interval of [order.from.interval, order.to.interval]) {
      const { duration } = builder.intervalAt(interval);
      if (seen.has(interval) || typeof duration !== 'number') continue;
      seen.add(interval);
      arcs.push([interval * 2, interval * 2 + 1, duration], [interval * 2 + 1, interval * 2, -duration]);
    }
  }
  const best = new Map<number, number>([[node(from), 0]]);
  // A chain passes each instant once; more rounds would mean a cycle that no plan satisfies.
  for (let round = 0; round <= seen.size * 2; round++) {
    let changed = false;
    for (const [a, b, weight] of arcs) {
      const reached = best.get(a);
      if (reached === undefined || reached + weight <= (best.get(b) ?? Number.NEGATIVE_INFINITY)) continue;
      best.set(b, reached + weight);
      changed = true;
    }
    if (!changed) break;
  }
  const found = best.get(node(to));
  return found === undefined ? null : found - from.offset + to.offset;
}
