import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware wrench kind=hand-tool at=EV1
hardware lid kind=cover at=bay state=closed
task look rank=1 eva=day { stint open-it who=EV1 at=bay { open lid; close lid${last} } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 look/open-it
EV1 0:18-0:22 bay > porch
EV2 0:22-0:27 in
EV1 0:27-0:32 in
hatch 0:32-0:37`;

export const whatWentOutIsAccountedFor = defineRule({
  title: 'What a person carried out is brought home, stowed or named as staying',
  broken: 'Something that went out is left outside',
  severity: 'warning',
  why: 'A tool left at a worksite is found missing when it is needed, and may drift off. The count at the hatch has to close.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, valueBefore, valueLeft } of facts.evas) {
      for (const piece of facts.campaign.hardware) {
        const holder = `${piece.id}.holder`;
        if (!facts.hardware.variables.has(holder)) continue;
        const started = valueBefore(holder, 0);
        const left = valueLeft(holder);
        if (!started.startsWith('person:') || !left.startsWith('place:')) continue;
        yield {
          where: { eva: eva.eva, person: started.slice('person:'.length), petS: eva.bothInS, span: piece.span },
          why: `${piece.title} went out with ${started.slice('person:'.length)} and is left at ${left.slice('place:'.length)}`,
          mend: `take ${piece.id} along, stow it, or say with a "leave" that it stays`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('; put wrench to=bay'), timeline },
    satisfies: { campaign: campaign(''), timeline },
  },
});
