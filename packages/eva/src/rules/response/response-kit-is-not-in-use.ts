import { formatPet } from '@handrail/quantity/time';
import { responseKitList } from '../../response/kit-list.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (kit: string): string => `
hardware driver kind=power-tool at=EV1 { property torque-most "40 N·m" }
hardware crank kind=ratchet at=bay { property torque-most "60 N·m" }
hardware spare-crank kind=ratchet at=bay { property torque-most "60 N·m" }
hardware b1 b2 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
task one rank=1 eva=day { stint loosen who=EV1 at=bay { release b1 with=driver } }
task two rank=2 eva=day { stint loosen who=EV2 at=bay { release b2 with=crank } }
response stuck "Bolt will not move" trigger="no turns" kind=bolt { inspect it; minutes low=2 likely=5 high=10; kit ${kit} }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV2 0:10-0:14 porch > bay
EV1 0:14-0:22 one/loosen
EV2 0:14-0:22 two/loosen
EV1 0:22-0:26 bay > porch
EV2 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const responseKitIsNotInUse = defineRule({
  title: 'What a response needs is not in the hands of somebody at work when it may be needed',
  broken: 'What a response needs is in use by somebody else just then',
  severity: 'warning',
  why: 'One wrench cannot be at two bolts. Who has the trouble waits for it, or the other stops half way through.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      for (const { response, asked, inUse } of responseKitList(facts.campaign, wayHomeOf(facts, evaFacts))) {
        if (inUse === null || response.from === 'stock') continue;
        const { person, stint, step, startS: petS } = inUse.segment;
        const { inUseBy, piece } = inUse.kit;
        yield {
          where: { eva: evaFacts.eva.eva, person, stint, step, petS },
          why: `"${response.title}" needs ${asked}; at PET ${formatPet(petS)} ${inUseBy?.person ?? 'somebody'} works with ${piece ?? asked} in ${inUseBy?.stint ?? '?'}, and there is no other in reach`,
          mend: 'take a second one along, or keep the two pieces of work apart',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('crank'), timeline },
    satisfies: { campaign: campaign('spare-crank'), timeline },
  },
});
