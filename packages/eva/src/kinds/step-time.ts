import type { Hardware, Step } from '../campaign/campaign.ts';
import type { KindsLibrary } from './kinds-library.ts';
import { stepVerbs } from './step-verbs.ts';

export interface StepTime {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * How long one sentence takes at pace 1, from the kinds' figures.
 *
 * Method: piece by piece, the verb's low, likely and high plus turns × seconds per turn for driven fasteners; the pieces of
 * one sentence are added figure by figure, as if one slow piece made the others slow too. That is wide on purpose: the true
 * 10th and 90th percentiles of a sum of independent pieces lie nearer to its median. A time written on the step replaces all
 * of it and has no spread.
 *
 * @returns seconds; null when a figure is missing: a kind that does not know the verb, or a driven fastener whose turns are
 * stated neither on the step nor on the piece
 */
export function stepTimeS(step: Step, hardware: ReadonlyMap<string, Hardware>, library: KindsLibrary): StepTime | null {
  if (step.agreedS !== null) return { low: step.agreedS, likely: step.agreedS, high: step.agreedS };
  const { known, unknown } = stepVerbs(step, hardware, library);
  if (unknown.length > 0) return null;
  const sum = { low: 0, likely: 0, high: 0 };
  for (const { verb, hardware: piece } of known) {
    let drivenS = 0;
    if (verb.perTurnS !== null) {
      const turns = step.turns ?? piece?.turns ?? null;
      if (turns === null) return null;
      drivenS = verb.perTurnS * turns;
    }
    sum.low += verb.timeS.low + drivenS;
    sum.likely += verb.timeS.likely + drivenS;
    sum.high += verb.timeS.high + drivenS;
  }
  return sum;
}
