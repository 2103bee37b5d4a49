/** What each pin costs: the campaign is planned again without it, and the two plans are compared. */
import type { Campaign, Pin } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { planCampaign, type PlanOptions } from './plan-campaign.ts';

export interface PinPrice {
  readonly pin: Pin;
  /** Tasks that would be in without the pin, and those that would be out. */
  readonly gains: readonly string[];
  readonly losses: readonly string[];
  /** How much later both are in because of the pin, by EVA, seconds; negative: earlier (less work may be in). */
  readonly laterS: ReadonlyMap<string, number>;
  /** Both plans are proved in every EVA; else the price is that of the plans found. */
  readonly proved: boolean;
}

/** @param timeline the plan with all pins, by the same options */
export function pricePins(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  options: PlanOptions,
): readonly PinPrice[] {
  const pins = options.pins ?? campaign.pins;
  return pins.map((pin) => {
    const without = planWithout(campaign, hardware, timeline, {
      ...options,
      pins: pins.filter((other) => other !== pin),
    });
    const [held, freed] = [tasksIn(timeline), tasksIn(without)];
    return {
      pin,
      gains: [...freed].filter((id) => !held.has(id)),
      losses: [...held].filter((id) => !freed.has(id)),
      laterS: laterByEva(timeline, without),
      proved: [...timeline.evas, ...without.evas].every(({ claim }) => claim.status === 'optimal for these durations'),
    };
  });
}

function planWithout(campaign: Campaign, hardware: HardwareModel, near: Timeline, options: PlanOptions): Timeline {
  const running = planCampaign(campaign, hardware, { ...options, near, skipReasons: true });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

function tasksIn(timeline: Timeline): ReadonlySet<string> {
  return new Set(timeline.evas.flatMap(({ tasks }) => tasks));
}

function laterByEva(timeline: Timeline, without: Timeline): ReadonlyMap<string, number> {
  return new Map(
    timeline.evas.flatMap(({ eva, bothInS }) => {
      const other = without.evas.find((candidate) => candidate.eva === eva);
      return other === undefined ? [] : [[eva, bothInS - other.bothInS] as const];
    }),
  );
}
