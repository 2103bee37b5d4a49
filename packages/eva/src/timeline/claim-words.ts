/** What the planner claims of its own answer, in words: never more than was proved, and proved only where a second program checked it. */
import { formatDuration } from '@handrail/quantity/time';
import type { EvaTimeline } from './timeline.ts';

export function claimSentence(eva: EvaTimeline): string {
  if (eva.claim.status === 'written by hand') return 'Written by hand.';
  if (eva.claim.status === 'optimal for these durations') return 'Optimal for these durations.';
  const open = openLevelWords(eva);
  if (open.length === 0) return 'Best found; the planner proved it best, but no second program has checked that proof.';
  return `Best found; not proved best: ${open.join('; ')}.`;
}

/** For each level that is not proved what was found and what no plan can beat: the truth lies between. */
export function openLevelWords(eva: EvaTimeline): readonly string[] {
  return eva.claim.levels
    .filter(({ proved }) => !proved)
    .map(({ name, unit, value, bound }) => {
      if (value === null || bound === null) return `${name} open`;
      if (unit !== 's') return `${name} open: whether more of the ranked tasks fit is not settled`;
      const [found, least] = [formatDuration(value), formatDuration(bound)];
      if (name === 'margin') return `the wanted margin is missed by ${found}, in any plan by ${least} or more`;
      if (name === 'finish') return `in after ${found}, in any plan after ${least} or later`;
      return `${name} ${found}, in any plan ${least} or more`;
    });
}
