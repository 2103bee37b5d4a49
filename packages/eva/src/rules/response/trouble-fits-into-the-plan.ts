import { formatDuration, formatPet } from '@handrail/quantity/time';
import { allResponses } from '../../response/any-response.ts';
import { occasionsOf } from '../../response/concerned.ts';
import { type WhatIf, whatIf } from '../../response/what-if.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (limit: string): string => `
hardware driver kind=power-tool at=EV1 { property torque-most "40 N·m" }
hardware plug kind=data-connector at=bay state=mated
hardware b1 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
clock cold "Unit without data" limit="${limit}" kind=difference sense=most on-stop=reset { starts plug demated; stops plug mated }
task work rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; release b1 with=driver; mate plug; minutes 18 } }
response stuck "Bolt will not move" trigger="no turns" kind=bolt { inspect it; minutes low=2 likely=5 high=10 }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:32 work/pull
steps 0:18 0:26 0:32
EV1 0:32-0:36 bay > porch
EV2 0:36-0:41 in
EV1 0:41-0:46 in
hatch 0:46-0:51
wall 6:00 longest EVA`;

export const troubleFitsIntoThePlan = defineRule({
  title:
    'The plan bears each response of the campaign once, wherever it can come up: limits, clocks, windows, requests and gates hold',
  broken: 'Trouble that the campaign names breaks a limit where it comes up',
  severity: 'warning',
  why: 'A plan without room for the trouble that it names itself works only on the day when nothing goes wrong. Where it breaks, it is better known before: with more room, or with a decision.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      const { eva } = evaFacts;
      for (const response of allResponses(facts.campaign)) {
        if (response.from === 'stock' || response.leadsTo !== null || response.timeS === null) continue;
        let [worst, count]: [WhatIf | null, number] = [null, 0];
        for (const { startS, person } of occasionsOf(
          facts.campaign,
          facts.stints,
          response,
          wayHomeOf(facts, evaFacts).progress.segments,
        )) {
          const found = whatIf(
            facts.campaign,
            facts.hardware,
            facts.library,
            facts.timeline,
            eva,
            response,
            startS,
            person,
          );
          if (breaks(found).length === 0) continue;
          count++;
          if (worst === null || breaks(found).length > breaks(worst).length) worst = found;
        }
        if (worst === null) continue;
        const [who] = worst.responding;
        yield {
          where: {
            eva: eva.eva,
            person: who?.person ?? null,
            stint: who?.stint ?? null,
            petS: worst.petS,
            span: facts.campaign.responses.find((one) => one.id === response.id)?.span ?? null,
          },
          why: `"${response.title}" at PET ${formatPet(worst.petS)} takes up to ${formatDuration(worst.delayS ?? 0)}: ${breaks(
            worst,
          )
            .map(({ words }) => words)
            .join('; ')}${count > 1 ? `. So at ${count - 1} more ${count === 2 ? 'place' : 'places'}` : ''}`,
          mend: `leave more room there, or agree a gate; see handrail whatif … --response ${response.id} --at ${formatPet(worst.petS)}`,
        };
      }
    }
    // States that are left are the proof's and the gates' to judge.
    function breaks(found: WhatIf): WhatIf['consequences'] {
      return found.consequences.filter((one) => one.breaks && one.about !== 'state' && one.about !== 'way home');
    }
  },
  examples: {
    violates: { campaign: campaign('20 min'), timeline },
    satisfies: { campaign: campaign('30 min'), timeline },
  },
});
