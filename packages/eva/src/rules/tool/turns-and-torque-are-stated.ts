import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (figures: string): string => `
hardware driver kind=power-tool at=EV1 { property torque-least "2 N·m"; property torque-most "34 N·m" }
hardware b1 kind=bolt at=bay state=torqued ${figures}
task turn rank=1 eva=day { stint turn-it who=EV1 at=bay { release b1 with=driver; drive b1 with=driver; minutes 6 } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 turn/turn-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const turnsAndTorqueAreStated = defineRule({
  title: 'Every fastener that is driven has its turns and its torque in the plan',
  broken: 'A fastener is driven without stated turns or torque',
  severity: 'warning',
  why: 'The crew calls turns and torque, and the reader compares: without the expected figures a short or crossed thread is not noticed.',
  source: 'common practice',
  *check(facts) {
    const told = new Set<string>();
    for (const { eva, steps } of facts.evas) {
      for (const step of steps) {
        const sentence = step.stint.steps[step.index];
        if (sentence === undefined || sentence.verb !== 'drive') continue;
        for (const object of sentence.objects) {
          const piece = facts.pieces.get(object);
          if (piece === undefined || told.has(object)) continue;
          const missing = [
            (sentence.turns ?? piece.turns) === null ? 'turns' : null,
            (sentence.torqueNm ?? piece.torqueNm) === null ? 'torque' : null,
          ].filter((word) => word !== null);
          if (missing.length === 0) continue;
          told.add(object);
          yield {
            where: {
              eva: eva.eva,
              person: step.who,
              stint: step.stint.key,
              step: step.index,
              petS: step.startS,
              span: sentence.span,
            },
            why: `${piece.title} has no ${missing.join(' and no ')}`,
            mend: `write turns=14 torque="34 N·m" on ${object}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('torque="30 N·m" turns=10'), timeline },
  },
});
