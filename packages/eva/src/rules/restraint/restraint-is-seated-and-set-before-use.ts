import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
limits { restraint-ingress "1 min"; restraint-egress "1 min" }
hardware pad kind=foot-restraint at=EV1 { setting roll "30 deg" }
hardware bay-socket kind=socket at=bay
hardware lid kind=cover at=bay state=closed
task look rank=1 eva=day {
    stint seat-it who=EV1 at=bay { seat pad in=bay-socket; SET }
    stint open-it who=EV1 at=bay restraint=pad { open lid; close lid }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 look/seat-it
EV1 0:20-0:25 look/open-it
EV1 0:25-0:29 bay > porch
EV2 0:29-0:34 in
EV1 0:34-0:39 in
hatch 0:39-0:44`;

export const restraintIsSeatedAndSetBeforeUse = defineRule({
  title: 'A foot restraint is seated at the place and set before anybody gets in',
  broken: 'A foot restraint is used that is not seated and set here',
  severity: 'error',
  why: 'A restraint that is not locked in its socket comes away under load, and one set for another place puts the work out of reach.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses, valueBefore, steps } of facts.evas) {
      for (const [person, course] of courses) {
        for (const stretch of course) {
          const role = stretch.stint?.roles[stretch.role ?? 0];
          if (stretch.stint === null || role === undefined || role.restraint === null) continue;
          const restraint = facts.pieces.get(role.restraint);
          if (restraint === undefined) continue;
          const where = { eva: eva.eva, person, stint: stretch.stint.key, petS: stretch.startS, span: role.span };
          const holder = valueBefore(`${restraint.id}.holder`, stretch.startS);
          const socket = holder.startsWith('hardware:')
            ? facts.pieces.get(holder.slice('hardware:'.length))
            : undefined;
          const seatedHere = socket?.kind === 'socket' && socket.at.kind === 'place' && socket.at.id === role.at;
          if (!seatedHere) {
            yield {
              where,
              why: `${restraint.title} is at ${holder.replace(':', ' ')} when ${person} gets in at ${role.at}, PET ${formatPet(stretch.startS)}`,
              mend: `seat ${restraint.id} in a socket at ${role.at} before this stint`,
            };
            continue;
          }
          if (Object.keys(restraint.settings).length === 0) continue;
          const seated = steps.findLast(
            (step) =>
              step.endS <= stretch.startS &&
              step.stint.steps[step.index]?.verb === 'seat' &&
              step.stint.steps[step.index]?.objects.includes(restraint.id),
          );
          if (seated === undefined) continue;
          const set = steps.some(
            (step) =>
              step.startS >= seated.endS &&
              step.endS <= stretch.startS &&
              step.stint.steps[step.index]?.verb === 'adjust' &&
              step.stint.steps[step.index]?.objects.includes(restraint.id),
          );
          if (!set) {
            yield {
              title: 'A foot restraint is used with settings nobody has made since it was seated',
              where,
              why: `${restraint.title} was seated at PET ${formatPet(seated.endS)} and no step adjusts it before PET ${formatPet(stretch.startS)}`,
              mend: `add "adjust ${restraint.id} settings=…" after it is seated`,
            };
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign.replace('; SET', ''), timeline },
    satisfies: { campaign: campaign.replace('SET', 'adjust pad settings="roll 30 deg"'), timeline },
  },
});
