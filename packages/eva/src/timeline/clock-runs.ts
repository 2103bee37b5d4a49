/** The runs of each clock in one EVA: from the change that starts it to the change that stops it. */
import type { Campaign, Clock } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { StateWrite } from './state-writes.ts';
import type { EvaTimeline } from './timeline.ts';

export interface ClockRun {
  readonly clock: Clock;
  readonly startS: number;
  /** null: nothing in this EVA stops it. */
  readonly stopS: number | null;
  readonly startedBy: string;
  readonly stoppedBy: string | null;
}

/** `valuesAtStart`: the state when the EVA begins; a variable that is absent there has its initial value. */
export function clockRuns(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  writes: readonly StateWrite[],
  valuesAtStart: ReadonlyMap<string, string> = new Map(),
): readonly ClockRun[] {
  const runs: ClockRun[] = [];
  for (const clock of campaign.clocks) {
    const current = new Map<string, string>();
    const valueOf = (variable: string): string =>
      current.get(variable) ?? valuesAtStart.get(variable) ?? hardware.variables.get(variable)?.initial ?? 'unknown';
    let open: { startS: number; by: string } | null = null;
    for (const write of writes) {
      if (write.petS > eva.bothInS) break;
      const before = valueOf(write.variable);
      current.set(write.variable, write.value);
      const changedTo = (change: Clock['start']): boolean =>
        change.variable === write.variable && change.values.includes(write.value) && !change.values.includes(before);
      if (open !== null && changedTo(clock.stop)) {
        runs.push({ clock, startS: open.startS, stopS: write.petS, startedBy: open.by, stoppedBy: write.by });
        open = null;
      } else if (open === null && changedTo(clock.start)) {
        open = { startS: write.petS, by: write.by };
      }
    }
    if (open !== null) runs.push({ clock, startS: open.startS, stopS: null, startedBy: open.by, stoppedBy: null });
  }
  return runs;
}
