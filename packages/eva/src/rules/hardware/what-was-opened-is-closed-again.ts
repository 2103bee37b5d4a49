import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware lid kind=cover at=bay state=closed
task look rank=1 eva=day { stint open-it who=EV1 at=bay { open lid; inspect lid${last} } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 look/open-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const whatWasOpenedIsClosedAgain = defineRule({
  title: 'What was opened is closed again before the EVA ends',
  broken: 'Something that was opened stays open',
  severity: 'warning',
  why: 'A cover or blanket left open lets in heat, cold and debris. Where it may stay open, the campaign says so with a "leave".',
  source: 'common practice',
  *check(facts) {
    for (const { eva, writes, valueBefore, valueLeft } of facts.evas) {
      for (const piece of facts.campaign.hardware) {
        const aspect = facts.library.kinds.get(piece.kind)?.aspects[0];
        if (aspect === undefined || !['cover', 'blanket', 'cap', 'hatch', 'fairlead'].includes(piece.kind)) continue;
        const started = valueBefore(piece.id, 0);
        const left = valueLeft(piece.id);
        if (left === started || aspect.safe[left] === 'always' || aspect.safe[started] !== 'always') continue;
        const last = writes.findLast((write) => write.variable === piece.id);
        if (last === undefined) continue;
        const said =
          facts.stints.get(last.by)?.leaves.some((leave) => leave.variable === piece.id && leave.value === left) ??
          false;
        if (said) continue;
        yield {
          where: { eva: eva.eva, stint: last.by, petS: last.petS, span: facts.stints.get(last.by)?.span ?? null },
          why: `${piece.title} was ${started} at egress and is left ${left} by ${last.by}; that is safe ${aspect.safe[left] === undefined ? 'for nobody knows how long' : `until: ${aspect.safe[left]}`}`,
          mend: `close ${piece.id}, or write "leave ${piece.id} ${left} at=end" if it may stay so`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('; close lid'), timeline },
  },
});
