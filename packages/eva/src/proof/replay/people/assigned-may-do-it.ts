import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, oneOf } from '../replay-finding.ts';

/** Every role is filled by one of its candidates, who takes part in the EVA if the work is outside. */
export function assignedMayDoIt(context: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const { eva, placed } of context.flown) {
    const crew = new Set(eva.egress.map((passage) => passage.person));
    for (const one of placed) {
      const where = { eva: eva.id, stint: one.stint.key, petS: one.planned.startS, span: one.stint.span };
      const { assigned } = one.planned;
      if (assigned.length !== one.stint.roles.length) {
        findings.push(
          noticed('replay/every-role-is-filled', {
            ...where,
            title: `"${one.stint.title}" has ${one.stint.roles.length} roles, the plan fills ${assigned.length}`,
            why: `assigned: ${assigned.join(', ') || 'nobody'}`,
          }),
        );
      }
      one.stint.roles.forEach((role, index) => {
        const who = assigned[index];
        if (who === undefined) return;
        if (!role.candidates.includes(who)) {
          findings.push(
            noticed('replay/assigned-is-a-candidate', {
              ...where,
              person: who,
              title: `${who} is the ${role.name} of "${one.stint.title}", which is not theirs to do`,
              why: `it may be ${oneOf(role.candidates)}`,
              mend: `assign ${oneOf(role.candidates)}`,
            }),
          );
        } else if (context.people.get(who)?.role === 'outside' && !crew.has(who)) {
          findings.push(
            noticed('replay/assigned-is-outside', {
              ...where,
              person: who,
              title: `${who} works in EVA ${eva.id} without leaving by the hatch`,
              why: `the egress lists ${[...crew].join(', ') || 'nobody'}`,
              mend: `assign somebody who goes out, or add ${who} to the egress`,
            }),
          );
        }
      });
    }
  }
  return findings;
}
