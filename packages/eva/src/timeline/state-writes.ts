/** Every write of a hardware state that a timeline makes, in order of time: stints by their inferred effects, outside events by their instant. */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline, PlannedStint } from './timeline.ts';

export interface StateWrite {
  readonly petS: number;
  readonly variable: string;
  readonly value: string;
  /** Stint key or event id. */
  readonly by: string;
}

export function stateWrites(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline): readonly StateWrite[] {
  const writes: StateWrite[] = [];
  for (const planned of eva.stints) {
    for (const leave of hardware.effects.get(planned.stint)?.leaves ?? []) {
      writes.push({
        petS: leaveInstant(planned, leave.step),
        variable: leave.variable,
        value: roleValue(leave.value, planned),
        by: planned.stint,
      });
    }
  }
  for (const event of campaign.events) {
    const petS = Math.round((event.atUtcMs - eva.petZeroUtcMs) / 1000);
    for (const leave of event.leaves) writes.push({ petS, variable: leave.variable, value: leave.value, by: event.id });
  }
  return writes.sort((a, b) => a.petS - b.petS || (a.variable < b.variable ? -1 : a.variable > b.variable ? 1 : 0));
}

/** Step -1: at the start of the stint; steps.length: at its end. */
function leaveInstant(planned: PlannedStint, step: number): number {
  return step < 0 ? planned.startS : (planned.stepEndsS[step] ?? planned.endS);
}

/** "role:0" is whoever fills role 0 of the stint. */
function roleValue(value: string, planned: PlannedStint): string {
  return value.startsWith('role:') ? `person:${planned.assigned[Number(value.slice(5))] ?? '?'}` : value;
}
