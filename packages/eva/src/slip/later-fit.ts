/** When a stint that has lost its window would next fit. */
import type { Campaign, Stint, WindowSet, WindowUse } from '../campaign/campaign.ts';
import type { EvaTimeline, PlannedStint } from '../timeline/timeline.ts';

export interface LaterFit {
  readonly stint: string;
  readonly window: string;
  /** How much later the stint starts, whole seconds, over 0. */
  readonly waitS: number;
  /** Where it then starts, PET. */
  readonly startS: number;
  /** The interval it then lies in (inside), or that it then comes after (outside), PET, pad counted. */
  readonly intervalS: readonly [number, number];
}

/** null: no interval of this window suits any later start that was looked at. */
export function laterFit(
  campaign: Campaign,
  plan: EvaTimeline,
  planned: PlannedStint,
  use: WindowUse,
): LaterFit | null {
  const window = campaign.windows.find(({ id }) => id === use.window);
  const stint = campaign.tasks.flatMap((task) => task.stints).find(({ key }) => key === planned.stint);
  if (window === undefined || stint === undefined) return null;
  const [startS, endS] = usedPart(stint, planned, use);
  const at = (waitS: number, interval: readonly [number, number]): LaterFit => ({
    stint: planned.stint,
    window: window.id,
    waitS,
    startS: planned.startS + waitS,
    intervalS: interval,
  });
  const intervals = petIntervals(window, plan, use.mode);
  if (use.mode === 'inside') {
    for (const [from, to] of intervals) {
      const waitS = Math.max(0, Math.ceil(from - startS));
      if (waitS > 0 && endS + waitS <= to) return at(waitS, [from, to]);
    }
    return null;
  }
  let waitS = 0;
  let last: readonly [number, number] | null = null;
  for (const [from, to] of intervals) {
    if (from < Math.max(endS, startS + 1) + waitS && startS + waitS < to) {
      waitS = Math.ceil(to - startS);
      last = [from, to];
    }
  }
  return last === null ? null : at(waitS, last);
}

/** The stretch that the use speaks of, PET. */
export function usedPart(stint: Stint, planned: PlannedStint, use: WindowUse): readonly [number, number] {
  const boundary = (step: number): number =>
    step <= 0
      ? planned.startS
      : step >= stint.steps.length
        ? planned.endS
        : (planned.stepEndsS[step - 1] ?? planned.endS);
  if (use.part === 'whole') return [planned.startS, planned.endS];
  if (use.part === 'start') return [planned.startS, planned.startS];
  return [boundary(use.fromStep), boundary(use.toStep)];
}

function petIntervals(
  window: WindowSet,
  plan: EvaTimeline,
  mode: WindowUse['mode'],
): readonly (readonly [number, number])[] {
  const padS = mode === 'inside' ? window.padS : -window.padS;
  return window.intervals
    .map(([from, to]) => [(from - plan.petZeroUtcMs) / 1000 + padS, (to - plan.petZeroUtcMs) / 1000 - padS] as const)
    .filter(([from, to]) => to > from);
}
