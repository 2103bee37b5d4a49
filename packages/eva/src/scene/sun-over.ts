import type { Vector3 } from '@handrail/quantity/vector';
import type { Campaign } from '../campaign/campaign.ts';
import { evaSpan } from '../sky/campaign/eva-span.ts';
import { dayNight } from '../sky/day-night.ts';
import { sunInBody } from '../sky/sun-in-body.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';

export interface SunOver {
  readonly directionAt: (utcMs: number) => Vector3;
  readonly night: readonly (readonly [number, number])[];
}

/** The Sun over one EVA and `edgeS` on both sides; null: no orbit or attitude is stated. */
export function sunOver(campaign: Campaign, eva: EvaTimeline, edgeS: number): SunOver | null {
  const { orbit, attitude } = campaign.sky;
  const stated = campaign.evas.find(({ id }) => id === eva.eva);
  if (orbit === null || attitude === null || stated === undefined) return null;
  const { startUtcMs, endUtcMs } = evaSpan(stated);
  const from = Math.min(startUtcMs, eva.petZeroUtcMs - edgeS * 1000);
  const to = Math.max(endUtcMs, eva.petZeroUtcMs + (eva.bothInS + edgeS) * 1000);
  return {
    directionAt: sunInBody(orbit.elements, attitude, from, to),
    night: dayNight(orbit.elements, from, to).umbra,
  };
}
