/**
 * Which pairs of progress can stand side by side: person A in one segment while person B is in another, in some execution whose
 * durations stay within their bounds and that keeps the orders of the timeline (each person's own, joins, lags, who writes a
 * state before who needs it, the hatch, the arms).
 *
 * Left out only is what an order forbids or what earliest starts and latest ends keep apart. Which durations hang together is
 * not followed, so pairs may be in it that cannot come true: the worst over them is on the careful side.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { eventNetwork, longest, reachability } from './event-network.ts';
import type { Segment } from './segments.ts';

export interface ProgressPair {
  readonly a: Segment;
  readonly b: Segment;
  /** PET range in which both can be so at once. */
  readonly fromS: number;
  readonly toS: number;
}
/** What stands behind the pairs can be replaced by a tighter temporal network. */
export type CoexistingPairs = (
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  a: readonly Segment[],
  b: readonly Segment[],
) => readonly ProgressPair[];

export const coexistingPairs: CoexistingPairs = (campaign, hardware, eva, a, b) => {
  const { names, planned, edges } = eventNetwork(campaign, hardware, eva, a, b);
  const index = new Map(names.map((name, at) => [name, at] as const));
  const earliest = longest(
    names,
    edges,
    (edge) => edge.leastS,
    () => 0,
  );
  // Nobody starts earlier than planned in the late case: waits for windows and pins are kept.
  const latest = longest(
    names,
    edges,
    (edge) => edge.mostS,
    (name) => planned.get(name) as number,
  );
  const reach = reachability(names, index, edges);
  const before = (x: string, y: string): boolean => {
    const [from, to] = [index.get(x), index.get(y)];
    if (from === undefined || to === undefined) return false;
    return from === to || ((reach[from]?.[to >> 5] ?? 0) & (1 << (to & 31))) !== 0;
  };
  const pairs: ProgressPair[] = [];
  for (const one of a) {
    for (const two of b) {
      const fromS = Math.max(earliest.get(one.from) ?? 0, earliest.get(two.from) ?? 0);
      const toS = Math.min(latest.get(one.till) ?? one.endS, latest.get(two.till) ?? two.endS);
      if (fromS >= toS || before(one.till, two.from) || before(two.till, one.from)) continue;
      pairs.push({ a: one, b: two, fromS, toS });
    }
  }
  return pairs;
};
