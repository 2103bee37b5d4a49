/** How hardware and arms stand after an EVA: every write of the timeline and of the outside events, in the order they happen. */
import type { Campaign, Stint } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { stateUse, variablesOf } from './state-use.ts';
import { stepCount } from './team-mode.ts';

export interface AsLeft {
  readonly values: ReadonlyMap<string, string>;
  readonly armPoses: ReadonlyMap<string, string>;
}

/** Values and poses at the campaign's start. */
export function asStated(campaign: Campaign, hardware: HardwareModel): AsLeft {
  return {
    values: new Map([...hardware.variables.values()].map(({ id, initial }) => [id, initial])),
    armPoses: new Map(campaign.arms.map(({ id, startPose }) => [id, startPose])),
  };
}

/** Outside events that happen before an instant and not before another are written in their order. */
export function afterEvents(campaign: Campaign, before: AsLeft, fromUtcMs: number, toUtcMs: number): AsLeft {
  const values = new Map(before.values);
  const events = campaign.events.filter(({ atUtcMs }) => atUtcMs >= fromUtcMs && atUtcMs < toUtcMs);
  for (const event of [...events].sort((a, b) => a.atUtcMs - b.atUtcMs)) {
    for (const { variable, value } of event.leaves) values.set(variable, value);
  }
  return { values, armPoses: before.armPoses };
}

export function asLeft(campaign: Campaign, hardware: HardwareModel, before: AsLeft, timeline: EvaTimeline): AsLeft {
  const stints = new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
  const arms = new Set(campaign.arms.map(({ id }) => id));
  const writes: { at: number; variable: string; value: string }[] = [];
  const poses: { at: number; arm: string; pose: string }[] = [];
  for (const planned of timeline.stints) {
    const stint = stints.get(planned.stint);
    const effects = hardware.effects.get(planned.stint);
    if (stint === undefined) continue;
    const assigned = planned.assigned;
    const mode = { assigned, arms: new Set(assigned.filter((id) => arms.has(id))), standing: [], boundaries: [] };
    for (const [index, role] of stint.roles.entries()) {
      if (role.name === 'arm') poses.push({ at: planned.endS, arm: assigned[index] as string, pose: role.to });
    }
    if (effects === undefined) continue;
    for (const variable of variablesOf(effects)) {
      // Holds end where the model ends them, so that ties fall the same way.
      const { write } = stateUse(stint, effects, variable, mode);
      if (write !== null) writes.push({ at: instantOf(stint, planned, write.to), variable, value: write.value });
    }
  }
  for (const move of timeline.moves) {
    if (arms.has(move.who)) poses.push({ at: move.endS, arm: move.who, pose: move.to });
  }
  const values = new Map(before.values);
  const endMs = timeline.petZeroUtcMs + timeline.bothInS * 1000;
  for (const event of campaign.events) {
    if (event.atUtcMs < timeline.petZeroUtcMs || event.atUtcMs >= endMs) continue;
    const at = (event.atUtcMs - timeline.petZeroUtcMs) / 1000;
    for (const { variable, value } of event.leaves) writes.push({ at, variable, value });
  }
  for (const { variable, value } of writes.sort((a, b) => a.at - b.at)) values.set(variable, value);
  const armPoses = new Map(before.armPoses);
  for (const { arm, pose } of poses.sort((a, b) => a.at - b.at)) armPoses.set(arm, pose);
  return { values, armPoses };
}

function instantOf(stint: Stint, planned: EvaTimeline['stints'][number], boundary: number): number {
  if (boundary <= 0) return planned.startS;
  if (boundary >= stepCount(stint)) return planned.endS;
  return planned.stepEndsS[boundary - 1] ?? planned.endS;
}
