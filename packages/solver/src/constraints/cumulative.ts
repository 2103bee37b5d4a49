import type { Compilation } from '../engine/compilation.ts';
import type { Cumulative, Point } from '../model/model.ts';
import { EnergyPropagator } from '../propagators/energy.ts';
import { TimetablePropagator } from '../propagators/timetable.ts';

const MOST_PAIRS = 20_000;

/**
 * Demands of running members within a capacity: timetable, and an order literal for each pair that is too much together.
 * Inferences `timetable`, `order`, `demand`, `energy`.
 */
export function postCumulative(c: Cumulative, index: number, at: Compilation): void {
  const { kernel } = at;
  // One interval named twice asks for both demands; one that asks for nothing is no member.
  const demands = new Map<number, number>();
  for (const { interval, demand } of c.members) demands.set(interval, (demands.get(interval) ?? 0) + demand);
  const members = [...demands].filter(([, demand]) => demand > 0);
  for (const [id, demand] of members) {
    if (demand <= c.capacity) continue;
    // It fits only without length.
    const { start, end } = at.interval(id);
    kernel.postArc(end, start, 0, at.presences([id]), index, 'demand');
  }
  let pairs = 0;
  for (const [x, [i, a]] of members.entries()) {
    for (const [j, b] of members.slice(x + 1)) {
      if (!at.canOverlap(i, j)) continue;
      // Members without length take nothing, so that they need no order.
      const isShort = at.interval(i).minDuration === 0 || at.interval(j).minDuration === 0;
      if (a + b <= c.capacity || pairs >= MOST_PAIRS || isShort) {
        at.isPairwise = false;
        continue;
      }
      pairs++;
      postOrder(i, j, index, at);
    }
  }
  if (members.length > 0) {
    new TimetablePropagator(
      kernel,
      members.map(([id, demand]) => ({ ...at.interval(id), demand })),
      c.capacity,
      index,
    );
  }
  if (members.length > 2 && at.looksAtEnergy) {
    new EnergyPropagator(
      kernel,
      members.map(([id, demand]) => ({ ...at.interval(id), demand })),
      c.capacity,
      index,
      () => at.isLogged,
    );
  }
}

/** i and j may not overlap: an order literal and an arc for each of its values. */
function postOrder(i: number, j: number, index: number, at: Compilation): void {
  const start = (interval: number): Point => ({ interval, of: 'start', offset: 0 });
  const end = (interval: number): Point => ({ interval, of: 'end', offset: 0 });
  const literal = at.orderLiteral(at.block(start(i), end(i)), at.block(start(j), end(j)));
  const conditions = at.presences([i, j]);
  at.noteOrderUse(literal, at.interval(i).presence, at.interval(j).presence);
  at.kernel.postArc(at.interval(i).end, at.interval(j).start, 0, [literal, ...conditions], index, 'order');
  at.kernel.postArc(at.interval(j).end, at.interval(i).start, 0, [literal ^ 1, ...conditions], index, 'order');
}
