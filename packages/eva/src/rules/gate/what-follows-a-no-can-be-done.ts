import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { afterNoOf } from '../gate-facts.ts';

const campaign = (drops: string): string => `
hardware lid kind=cover at=bay state=closed
task uncover rank=1 eva=day { stint lift who=EV1 at=bay { open lid } }
task tidy rank=2 eva=day { stint shut who=EV1 at=bay { close lid } }
gate lid "Go to open the lid" before="uncover/lift" caller=IV on-no="leave it closed"${drops} { condition "both well" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 uncover/lift
EV1 0:18-0:22 tidy/shut
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const whatFollowsANoCanBeDone = defineRule({
  title: 'Work of other tasks that rests on what a gate opens is given up by the same "no"',
  broken: 'A "no" at a gate leaves work in the plan that cannot be done then',
  severity: 'warning',
  why: 'After a "no" the crew goes on with the rest of the plan. What rests on the work that was not done is found out in front of it, an hour later.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      for (const gate of facts.campaign.gates) {
        const found = afterNoOf(facts, evaFacts, gate);
        const [first] = found?.alsoFails ?? [];
        if (found === null || first === undefined) continue;
        const tasks = [...new Set(found.alsoFails.map((need) => need.stint.split('/')[0] ?? ''))];
        yield {
          where: { eva: evaFacts.eva.eva, stint: first.stint, petS: first.petS, span: gate.span },
          why: `after "no" at "${gate.title}" ${first.stint} cannot be done at PET ${formatPet(first.petS)}: ${first.words}${found.alsoFails.length > 1 ? `; nor ${found.alsoFails.length - 1} more` : ''}`,
          mend: `write drops="${[...gate.drops, ...tasks].join(' ')}" in the gate, or a way to do it without`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign(' drops="tidy"'), timeline },
  },
});
