import type { Block, Compilation } from '../engine/compilation.ts';
import type { Cumulative, IntervalId } from '../model/model.ts';
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
  postOrders(members, c.capacity, index, at);
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

/** Pairs that are too much together, and that nothing else keeps apart, get an order. */
function postOrders(
  members: readonly (readonly [IntervalId, number])[],
  capacity: number,
  index: number,
  at: Compilation,
): void {
  const blocks = members.map(([interval]) =>
    at.block({ interval, of: 'start', offset: 0 }, { interval, of: 'end', offset: 0 }),
  );
  let pairs = 0;
  for (let x = 0; x < members.length; x++) {
    const [i, a] = members[x] as (typeof members)[number];
    for (let y = x + 1; y < members.length; y++) {
      const [j, b] = members[y] as (typeof members)[number];
      if (!at.canOverlap(i, j)) continue;
      // Members without length take nothing, so that they need no order.
      const isShort = at.interval(i).minDuration === 0 || at.interval(j).minDuration === 0;
      if (a + b <= capacity || pairs >= MOST_PAIRS || isShort) {
        at.isPairwise = false;
        continue;
      }
      pairs++;
      postOrder(i, j, at.orderLiteral(blocks[x] as Block, blocks[y] as Block), index, at);
    }
  }
}

/** i and j may not overlap: an arc for each value of their order. */
function postOrder(i: IntervalId, j: IntervalId, literal: number, index: number, at: Compilation): void {
  const conditions = at.presences([i, j]);
  at.noteOrderUse(literal, at.interval(i).presence, at.interval(j).presence);
  at.kernel.postArc(at.interval(i).end, at.interval(j).start, 0, [literal, ...conditions], index, 'order');
  at.kernel.postArc(at.interval(j).end, at.interval(i).start, 0, [literal ^ 1, ...conditions], index, 'order');
}
