/** What a delay at one instant does to the rest of an EVA: every later instant as early as the orders of the plan let it be. */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { eventNetwork, type EventNetwork, longest } from './event-network.ts';
import { boundaryName, type Segment } from '../wayhome/segments.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';

/**
 * Planned durations, planned starts as the earliest, the segments of those who respond longer by `delayS`. Waits take up what
 * they can; who works first of two that must not meet does not change.
 *
 * @returns new time of each instant that `network` names
 */
function delayFrom(network: EventNetwork, responding: readonly Segment[], delayS: number): ReadonlyMap<string, number> {
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

/** The same timeline with each instant where the delay puts it. */
export function movedTimeline(
  campaign: Campaign,
  hardware: HardwareModel,
  surface: WayHomeSurface,
  eva: EvaTimeline,
  responding: readonly Segment[],
  delayS: number,
): EvaTimeline {
  const stints = stintsByKey(campaign);
  const [a = [], b = []] = surface.progress.segments;
  const network = eventNetwork(campaign, hardware, eva, a, b);
  const times = delayFrom(network, responding, delayS);
  const then = (name: string): number => times.get(name) ?? network.planned.get(name) ?? 0;
  const moved = eva.stints.map((planned) => {
    const count = Math.max(1, stints.get(planned.stint)?.steps.length ?? 1);
    return {
      ...planned,
      startS: then(boundaryName(planned.stint, 0)),
      endS: then(boundaryName(planned.stint, count)),
      stepEndsS: planned.stepEndsS.map((_, step) => then(boundaryName(planned.stint, step + 1))),
    };
  });
  const ingress = [...a, ...b].filter((segment) => segment.kind === 'in');
  const lastInS = Math.max(0, ...eva.passages.filter((one) => one.kind === 'ingress').map((one) => one.endS));
  const thenInS = Math.max(0, ...ingress.map((segment) => then(segment.till)));
  return { ...eva, stints: moved, bothInS: eva.bothInS + Math.max(0, thenInS - lastInS) };
}
