import { formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Whole seconds; starts before ends; the ends of steps in order, one for each step, the last at the end of the stint. */
export function timesAreInOrder(context: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const plan of context.timeline.evas) {
    const { eva } = plan;
    const inOrder = (what: string, times: readonly number[], stint: string | null, who: string | null): void => {
      const broken = times.find((time) => !Number.isSafeInteger(time));
      if (broken !== undefined) {
        findings.push(
          noticed('replay/times-are-whole-seconds', {
            title: `${what} has a time that is not a whole number of seconds`,
            why: `${broken} s`,
            eva,
            stint,
            person: who,
          }),
        );
        return;
      }
      const at = times.findIndex((time, index) => index > 0 && time < (times[index - 1] as number));
      if (at === -1) return;
      findings.push(
        noticed('replay/times-are-in-order', {
          title: `${what} runs backwards`,
          why: `PET ${formatPet(times[at] as number)} comes after PET ${formatPet(times[at - 1] as number)}`,
          eva,
          stint,
          person: who,
          petS: times[at] as number,
        }),
      );
    };
    for (const planned of plan.stints) {
      inOrder(planned.stint, [planned.startS, ...planned.stepEndsS, planned.endS], planned.stint, null);
      const found = context.stints.get(planned.stint);
      if (found === undefined) continue;
      const steps = found.stint.steps.length;
      const given = planned.stepEndsS.length;
      const last = planned.stepEndsS.at(-1);
      const fits = steps === 0 ? given <= 1 : given === steps;
      if (!fits || (last !== undefined && last !== planned.endS)) {
        findings.push(
          noticed('replay/steps-fill-the-stint', {
            title: `The steps of "${found.stint.title}" do not fill it`,
            why: fits
              ? `the last step ends at PET ${formatPet(last ?? 0)}, the stint at PET ${formatPet(planned.endS)}`
              : `the timeline has ${given} step ends, the stint has ${steps} steps`,
            eva,
            stint: planned.stint,
            petS: planned.startS,
            span: found.stint.span,
          }),
        );
      }
    }
    for (const passage of plan.passages) {
      inOrder(`The ${passage.kind}`, [passage.startS, passage.endS], null, passage.person);
    }
    for (const move of plan.moves) inOrder(`The move of ${move.who}`, [move.startS, move.endS], null, move.who);
    for (const hold of plan.holds) {
      inOrder(
        `The hold of request ${hold.request}`,
        [hold.askS, hold.verifiedS, hold.firstUseS, hold.lastUseS, hold.clearedS],
        null,
        null,
      );
    }
    for (const join of plan.joins) inOrder(`Join ${join.join}`, [join.releasedS, join.waitsUntilS], null, null);
    inOrder('Both in', [plan.bothInS], null, null);
    if (!Number.isSafeInteger(plan.petZeroUtcMs)) inOrder('PET 0', [plan.petZeroUtcMs], null, null);
  }
  return findings;
}
