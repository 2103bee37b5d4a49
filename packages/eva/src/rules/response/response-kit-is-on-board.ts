import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

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
    for (const { eva, steps, valueBefore } of facts.evas) {
      const told = new Set<string>();
      for (const response of facts.campaign.responses) {
        for (const step of steps) {
          const applies = response.appliesTo;
          const concerns =
            applies === null ||
            ('stint' in applies
              ? applies.stint === step.stint.key
              : (step.stint.steps[step.index]?.objects ?? []).some(
                  (id) => facts.pieces.get(id)?.kind === applies.kind,
                ));
          if (!concerns) continue;
          for (const id of response.kit) {
            if (told.has(`${response.id} ${id}`) || outside(id, step.startS)) continue;
            told.add(`${response.id} ${id}`);
            yield {
              where: { eva: eva.eva, stint: step.stint.key, step: step.index, petS: step.startS, span: response.span },
              why: `"${response.title}" needs ${facts.pieces.get(id)?.title ?? id}; at PET ${formatPet(step.startS)} nobody outside has it, nor is it at this place`,
              mend: `take ${id} along, or name another tool in the response`,
            };
          }
          function outside(id: string, petS: number): boolean {
            let at = id;
            for (let depth = 0; depth < 6; depth++) {
              const piece = facts.pieces.get(at);
              const location = piece === undefined ? '' : `${piece.at.kind}:${piece.at.id}`;
              const known = facts.hardware.variables.has(`${at}.holder`) ? valueBefore(`${at}.holder`, petS) : location;
              if (known.startsWith('person:')) return facts.outside.some((person) => known === `person:${person.id}`);
              if (known.startsWith('place:')) return step.stint.roles.some((role) => known === `place:${role.at}`);
              if (!known.startsWith('hardware:')) return false;
              at = known.slice('hardware:'.length);
            }
            return false;
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('tip'), timeline },
    satisfies: { campaign: campaign('EV1'), timeline },
  },
});
