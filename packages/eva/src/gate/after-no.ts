/**
 * What a "no" at a gate comes to: the stint that it opens and the tasks that the gate gives up are not done, nor is what rests on them;
 * and how the vehicle is left then.
 */
import type { Campaign, Gate } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { type UnmetNeed, statesWithout } from '../timeline/states-without.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';

export interface AfterNo {
  /** Stints given up by the gate itself: the one that it opens, and what it drops and has not begun. */
  readonly leftOut: readonly string[];
  /** Stints of the same task that cannot be done then. */
  readonly fallsWithIt: readonly string[];
  /** Work of other tasks that cannot be done then, and that the gate does not give up. */
  readonly alsoFails: readonly UnmetNeed[];
  /** Values at the end, by variable; what is missing has its initial value. */
  readonly atEnd: ReadonlyMap<string, string>;
}

/** Stints given up by a "no" itself: the one that the gate opens, and what it drops and has not begun by then. */
export function givenUpBy(eva: EvaTimeline, gate: Pick<Gate, 'before' | 'drops'>): readonly string[] {
  const gated = eva.stints.find((planned) => planned.stint === gate.before);
  if (gated === undefined) return [];
  const isDropped = (stint: string): boolean => gate.drops.includes(stint) || gate.drops.includes(taskOf(stint));
  return eva.stints
    .filter((planned) => planned === gated || (isDropped(planned.stint) && planned.startS >= gated.startS))
    .map((planned) => planned.stint);
}

/**
 * @param values the states just before the stint that it opens would start
 * @returns null: the stint that it opens is not planned in this EVA
 */
export function afterNo(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  gate: Gate,
  values: ReadonlyMap<string, string>,
): AfterNo | null {
  const gated = eva.stints.find((planned) => planned.stint === gate.before);
  if (gated === undefined) return null;
  const leftOut = givenUpBy(eva, gate);
  const { unmet, atEnd } = statesWithout(campaign, hardware, eva, {
    // What is written at that very instant is after the call.
    fromS: gated.startS - 0.5,
    values,
    changed: new Map(),
    inHand: null,
    leftOut: new Set(leftOut),
  });
  const same = unmet.filter((need) => taskOf(need.stint) === taskOf(gate.before));
  return {
    leftOut,
    fallsWithIt: same.map((need) => need.stint),
    alsoFails: unmet.filter((need) => !same.includes(need)),
    atEnd,
  };
}

function taskOf(stint: string): string {
  return stint.split('/')[0] ?? '';
}
