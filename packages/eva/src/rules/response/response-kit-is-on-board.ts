import { formatDuration, formatPet } from '@handrail/quantity/time';
import { responseKitList } from '../../response/kit-list.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (at: string): string => `
hardware crank kind=ratchet at=${at} { property torque-most "60 N·m" }
hardware driver kind=power-tool at=EV1 { property torque-most "40 N·m" }
hardware b1 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
task free rank=1 eva=day { stint loosen who=EV1 at=bay { release b1 with=driver } }
response stuck "Bolt will not move" trigger="no turns" kind=bolt { minutes low=2 likely=5 high=10; kit crank }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 free/loosen
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const responseKitIsOnBoard = defineRule({
  title: 'What a response needs is outside with the crew whenever it may be needed',
  broken: 'A response needs something that nobody has outside',
  severity: 'warning',
  why: 'A response is only as good as its kit. What lies inside, or at another worksite, is not there when the bolt does not move.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      for (const { response, asked, notAtHand } of responseKitList(facts.campaign, wayHomeOf(facts, evaFacts))) {
        if (notAtHand === null) continue;
        const { segment, kit } = notAtHand;
        const title = facts.pieces.get(kit.piece ?? asked)?.title ?? asked;
        const lies = kit.where === null ? '' : `; it is ${kit.where}`;
        const away = kit.fetchS === null ? '' : `, ${formatDuration(kit.fetchS)} there and back`;
        yield {
          // What the stock set asks for is common practice; what the campaign asks for is its own word.
          ...(response.from === 'stock' ? { severity: 'note' as const } : {}),
          where: {
            eva: evaFacts.eva.eva,
            stint: segment.stint,
            step: segment.step,
            petS: segment.startS,
            span: facts.campaign.responses.find(({ id }) => id === response.id)?.span ?? null,
          },
          why: `"${response.title}" needs ${title}; at PET ${formatPet(segment.startS)} nobody outside has it, nor is it at this place${lies}${away}`,
          mend: `take ${kit.piece ?? `a ${asked}`} along, or name another tool in the response`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('tip'), timeline },
    satisfies: { campaign: campaign('EV1'), timeline },
  },
});
