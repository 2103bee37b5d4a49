/**
 * What the replay looks up: the campaign by id, and the planned stints that can be resolved, in order of time. It is built from
 * the documents alone. Times across EVAs are absolute: milliseconds UTC, so that as-left of one EVA is the start of the next.
 */
import type { Arm, Campaign, Eva, Hardware, Person, Role, Stint, Task } from '../../campaign/campaign.ts';
import type { HardwareModel, StintEffects } from '../../hardware/effects.ts';
import type { EvaTimeline, PlannedStint, Timeline } from '../../timeline/timeline.ts';

/** A planned stint together with what it plans. */
export interface Placed {
  readonly planned: PlannedStint;
  readonly stint: Stint;
  readonly task: Task;
  readonly eva: string;
  readonly petZeroUtcMs: number;
  readonly effects: StintEffects | null;
  /** Number of steps; a stint without sentences counts as one. */
  readonly steps: number;
}

export interface ReplayContext {
  readonly campaign: Campaign;
  readonly model: HardwareModel;
  readonly timeline: Timeline;
  readonly people: ReadonlyMap<string, Person>;
  readonly arms: ReadonlyMap<string, Arm>;
  readonly hardware: ReadonlyMap<string, Hardware>;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly stints: ReadonlyMap<string, { readonly stint: Stint; readonly task: Task }>;
  readonly evas: ReadonlyMap<string, Eva>;
  readonly places: ReadonlySet<string>;
  /** EVAs that the campaign knows, by PET 0. */
  readonly flown: readonly { readonly eva: Eva; readonly plan: EvaTimeline; readonly placed: readonly Placed[] }[];
  /** First place of each stint in the timeline; a second one is a finding of its own. */
  readonly placedByStint: ReadonlyMap<string, Placed>;
  /** Place outside the hatch; "outside" at level 0. */
  readonly hatch: string;
}

export function replayContext(campaign: Campaign, model: HardwareModel, timeline: Timeline): ReplayContext {
  const stints = new Map(
    campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, { stint, task }] as const)),
  );
  const evas = byId(campaign.evas);
  const placedByStint = new Map<string, Placed>();
  const flown = timeline.evas
    .filter((plan) => evas.has(plan.eva))
    .sort((a, b) => a.petZeroUtcMs - b.petZeroUtcMs)
    .map((plan) => {
      const placed: Placed[] = [];
      for (const planned of plan.stints) {
        const found = stints.get(planned.stint);
        if (found === undefined) continue;
        const one: Placed = {
          ...found,
          planned,
          eva: plan.eva,
          petZeroUtcMs: plan.petZeroUtcMs,
          effects: model.effects.get(planned.stint) ?? null,
          steps: Math.max(1, found.stint.steps.length),
        };
        placed.push(one);
        if (!placedByStint.has(planned.stint)) placedByStint.set(planned.stint, one);
      }
      placed.sort((a, b) => a.planned.startS - b.planned.startS || a.planned.endS - b.planned.endS);
      return { eva: evas.get(plan.eva) as Eva, plan, placed };
    });
  return {
    campaign,
    model,
    timeline,
    people: byId(campaign.people),
    arms: byId(campaign.arms),
    hardware: byId(campaign.hardware),
    tasks: byId(campaign.tasks),
    stints,
    evas,
    places: new Set(campaign.vehicle.places.map((place) => place.id)),
    flown,
    placedByStint,
    hatch: campaign.vehicle.hatch ?? 'outside',
  };
}

/** PET of the start of step k; of the end of the stint for k = number of steps. */
export function boundaryS(placed: Placed, step: number): number {
  if (step <= 0) return placed.planned.startS;
  if (step >= placed.steps) return placed.planned.endS;
  return placed.planned.stepEndsS[step - 1] ?? placed.planned.endS;
}

/** PET interval of a role; the whole stint where its steps are none or not given. */
export function roleSpanS(placed: Placed, role: Role): readonly [number, number] {
  if (role.toStep <= role.fromStep || placed.stint.steps.length === 0) {
    return [placed.planned.startS, placed.planned.endS];
  }
  return [boundaryS(placed, role.fromStep), boundaryS(placed, role.toStep)];
}

export function utcMs(placed: Placed, petS: number): number {
  return placed.petZeroUtcMs + petS * 1000;
}

function byId<T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> {
  return new Map(list.map((one) => [one.id, one]));
}
