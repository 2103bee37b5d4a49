import { formatDuration } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import type { Placed, ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Boundaries are rounded to a grid of 10 s: each is at most 5 s off, a length at most 10 s. */
const ROUNDING_S = 10;

/**
 * Each step takes its planning figure times the pace of the slowest person at work in it. What was signed is not shortened, nor
 * silently stretched.
 */
export function stintsTakeTheirFigures(context: ReplayContext): Finding[] {
  return context.flown.flatMap(({ placed }) => placed.flatMap((one) => replayStint(context, one)));
}

function replayStint(context: ReplayContext, placed: Placed): Finding[] {
  const { stint, planned } = placed;
  const { agreedS, stepsS } = stint.duration;
  const sum = stepsS.reduce((total, stepS) => total + stepS, 0);
  const usable = stepsS.length === placed.steps && sum > 0;
  let figureS = 0;
  for (let step = 0; step < placed.steps; step++) {
    const share = usable ? ((stepsS[step] as number) / sum) * agreedS : agreedS / placed.steps;
    figureS += share * paceOf(context, placed, step);
    const endS = planned.stepEndsS[step];
    const isLast = step === placed.steps - 1;
    if (isLast || endS === undefined) continue;
    if (Math.abs(endS - planned.startS - figureS) <= ROUNDING_S) continue;
    return [
      noticed('replay/steps-take-their-figures', {
        title: `Step ${step + 1} of "${stint.title}" does not end where its planning figures put it`,
        why: `${formatDuration(endS - planned.startS)} into the stint; the figures up to it add up to ${formatDuration(figureS)}`,
        eva: placed.eva,
        stint: stint.key,
        step,
        petS: endS,
        span: stint.steps[step]?.span ?? stint.span,
      }),
    ];
  }
  const takesS = planned.endS - planned.startS;
  if (Math.abs(takesS - figureS) <= ROUNDING_S) return [];
  return [
    noticed('replay/stints-take-their-figures', {
      title: `"${stint.title}" is planned ${takesS < figureS ? 'shorter' : 'longer'} than its planning figure`,
      why: `planned ${formatDuration(takesS)}; ${formatDuration(agreedS)} agreed, ${formatDuration(figureS)} at the pace of those assigned`,
      mend: `plan ${formatDuration(figureS)}, or have another figure agreed`,
      eva: placed.eva,
      stint: stint.key,
      petS: planned.startS,
      span: stint.duration.span,
    }),
  ];
}

function paceOf(context: ReplayContext, placed: Placed, step: number): number {
  const paces = placed.stint.roles.flatMap((role, index) => {
    const wholeStint = role.toStep <= role.fromStep || placed.stint.steps.length === 0;
    if (!wholeStint && (step < role.fromStep || step >= role.toStep)) return [];
    const person = context.people.get(placed.planned.assigned[index] ?? '');
    return person?.role === 'outside' ? [person.pace] : [];
  });
  return paces.length === 0 ? 1 : Math.max(...paces);
}
