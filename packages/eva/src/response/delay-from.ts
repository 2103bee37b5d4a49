/** What a delay at one instant does to the rest of an EVA: every later instant as early as the orders of the plan let it be. */
import { type EventNetwork, longest } from '../wayhome/event-network.ts';
import type { Segment } from '../wayhome/segments.ts';

/**
 * Planned durations, planned starts as the earliest, the segments of those who respond longer by `delayS`. Waits take up what
 * they can; who works first of two that must not meet does not change.
 *
 * @returns new time of each instant that `network` names
 */
export function delayFrom(
  network: EventNetwork,
  responding: readonly Segment[],
  delayS: number,
): ReadonlyMap<string, number> {
  const late = new Set(responding.map((segment) => `${segment.from}|${segment.till}`));
  return longest(
    network.names,
    network.edges,
    (edge) => {
      const isLate = late.has(`${edge.from}|${edge.to}`);
      if (!isLate) return edge.plannedS;
      // A wait that is used for the response is at least as long as the response.
      const segment = responding.find((one) => one.from === edge.from && one.till === edge.to);
      const idle = segment?.kind === 'wait' || segment?.kind === 'inside';
      return idle ? Math.max(edge.plannedS, delayS) : edge.plannedS + delayS;
    },
    (name) => network.planned.get(name) as number,
  );
}
