import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const tools = 'hardware tool-a tool-b tool-c tool-d kind=hand-tool at=bay\n';
const campaign = (count: number): string => `${tools}
task carry rank=1 eva=day {
    stint pick who=EV5 at=bay { take ${['tool-a', 'tool-b', 'tool-c', 'tool-d'].slice(0, count).join(' ')} from=bay }
}
person EV5 role=outside suit-limit="7 h" anchor=porch-anchor tether="26 m" carries=3
`;
const timeline = `${OUT}EV5 0:10-0:14 porch > bay
EV5 0:14-0:18 carry/pick
EV5 0:18-0:22 bay > porch
EV2 0:22-0:27 in
EV1 0:27-0:32 in
hatch 0:32-0:37`;

export const handsAreNotOverfull = defineRule({
  title: 'Nobody carries more loose items than they have hooks and hands for',
  broken: 'Somebody carries more than they have hooks and hands for',
  severity: 'warning',
  why: 'Every loose item hangs on a hook of its own; more than that tangles, and both hands are needed on the rail.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, writes, valueAt } of facts.evas) {
      for (const person of facts.outside) {
        if (person.carryMost === null) continue;
        const carried = facts.campaign.hardware.filter((piece) => facts.hardware.variables.has(`${piece.id}.holder`));
        const inHand = (petS: number): readonly string[] =>
          carried
            .filter((piece) => valueAt(`${piece.id}.holder`, petS) === `person:${person.id}`)
            .map((piece) => piece.id);
        const instants = new Set([
          0,
          ...writes.filter((write) => write.value === `person:${person.id}`).map((write) => write.petS),
        ]);
        for (const petS of instants) {
          const held = inHand(petS);
          if (held.length <= person.carryMost) continue;
          const by = writes.find((write) => write.petS === petS)?.by ?? null;
          yield {
            where: {
              eva: eva.eva,
              person: person.id,
              stint: by,
              petS,
              span: by === null ? person.span : (facts.stints.get(by)?.span ?? null),
            },
            why: `${person.id} carries ${held.length} loose items at PET ${formatPet(petS)} (${held.join(', ')}); the stated most is ${person.carryMost}`,
            mend: 'stow some in a bag, or leave them at a place, tethered',
          };
          break;
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign(4), timeline },
    satisfies: { campaign: campaign(2), timeline },
  },
});
