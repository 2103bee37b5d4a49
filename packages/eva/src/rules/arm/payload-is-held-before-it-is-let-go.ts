import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (start: string): string => `
hardware crate kind=box at=${start} load=large state=free { state power off; state retainer none }
task give rank=1 eva=day {
    stint pass-on who=EV1 partner=EV2 at=bay partner-at=bay { hand-over crate to=EV2 }
    stint keep who=EV2 at=bay { put crate to=bay; tether crate }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV2 0:10-0:14 porch > bay
EV1+EV2 0:14-0:18 give/pass-on
EV2 0:18-0:22 give/keep
EV1 0:22-0:26 bay > porch
EV2 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const payloadIsHeldBeforeItIsLetGo = defineRule({
  title: 'Whoever hands something over has it, and the next holds it before the last lets go',
  broken: 'Something is handed over that the giver does not have, or that nobody takes',
  severity: 'error',
  why: 'A box without a hand or a tether on it, even for a second, is a loose mass.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, steps, valueBefore } of facts.evas) {
      for (const step of steps) {
        const sentence = step.stint.steps[step.index];
        if (sentence?.verb !== 'hand-over') continue;
        for (const object of sentence.objects) {
          const holder = valueBefore(`${object}.holder`, step.endS);
          const givers = new Set(step.planned.assigned.flatMap((id) => [`person:${id}`, `arm:${id}`]));
          const where = {
            eva: eva.eva,
            person: step.who,
            stint: step.stint.key,
            step: step.index,
            petS: step.startS,
            span: sentence.span,
          };
          if (!givers.has(holder)) {
            yield {
              where,
              why: `${object} is at ${holder.replace(':', ' ')} at PET ${formatPet(step.startS)}, with neither of the two`,
              mend: `let the giver take ${object} first`,
            };
          } else if (
            sentence.to !== null &&
            facts.campaign.people.some((person) => person.id === sentence.to) &&
            !step.planned.assigned.includes(sentence.to)
          ) {
            yield {
              where,
              why: `${sentence.to} is to take ${object} and is not in this stint`,
              mend: `add ${sentence.to} with a "with" block`,
            };
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('bay'), timeline },
    satisfies: { campaign: campaign('EV1'), timeline },
  },
});
