import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (caller: string): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
gate look "Go to look" before="look/see" caller=${caller} on-no="come in" { condition "both well" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const callerIsNotInTheWork = defineRule({
  title: 'A gate is called by somebody who does not do the work behind it',
  broken: 'Whoever is to do the work gives the go for it',
  severity: 'warning',
  why: 'A go is a second pair of eyes on the conditions. Whoever stands in front of the work with tools in hand wants to begin.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const gate of facts.campaign.gates) {
        const planned = eva.stints.find((one) => one.stint === gate.before);
        if (planned === undefined || !planned.assigned.includes(gate.caller)) continue;
        yield {
          where: { eva: eva.eva, person: gate.caller, stint: gate.before, petS: planned.startS, span: gate.span },
          why: `${gate.caller} calls "${gate.title}" and does ${gate.before}`,
          mend: `let ${facts.campaign.people.find(({ role }) => role === 'inside')?.id ?? 'somebody inside'} call it`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('EV1'), timeline },
    satisfies: { campaign: campaign('IV'), timeline },
  },
});
