import { formatPet } from '@handrail/quantity/time';
import { railsThatMayTurn } from '../../vehicle/tether-path.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const work = `
limits { tether-swap "1 min" }
task look rank=1 eva=day { stint see who=EV1 at=wing { inspect wing } }
`;
const timeline = `${OUT}EV1 0:10-0:17 porch > bay > wing
EV1 0:17-0:30 look/see
EV1 0:30-0:37 wing > bay > porch
EV2 0:37-0:42 in
EV1 0:42-0:47 in
hatch 0:47-0:52`;

export const tetherStaysClearOfTurningJoints = defineRule({
  title: 'No tether lies over a joint that may turn',
  broken: 'A tether lies over a joint that may turn',
  severity: 'error',
  why: 'A joint that turns under a line winds it in, and with it the person.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses, travelOf, valueAt, writes } of facts.evas) {
      for (const person of facts.outside) {
        const told = new Set<string>();
        for (const stretch of courses.get(person.id) ?? []) {
          if (stretch.kind !== 'work' || stretch.on !== null) continue;
          const tether = travelOf(person.id).tetherAt(stretch.place);
          for (const rail of tether === null ? [] : railsThatMayTurn(tether)) {
            for (const condition of rail.openWhile) {
              const instants = [
                stretch.startS,
                ...writes
                  .filter(
                    (write) =>
                      write.variable === condition.variable && write.petS > stretch.startS && write.petS < stretch.endS,
                  )
                  .map((write) => write.petS),
              ];
              const bad = instants.find((petS) => !condition.allowed.includes(valueAt(condition.variable, petS)));
              if (bad === undefined || told.has(rail.id)) continue;
              told.add(rail.id);
              yield {
                where: {
                  eva: eva.eva,
                  person: person.id,
                  stint: stretch.stint?.key ?? null,
                  petS: bad,
                  span: rail.span,
                },
                why: `the line to ${stretch.place} lies over the rail from ${rail.from} to ${rail.to} while ${condition.variable} is ${valueAt(condition.variable, bad)} at PET ${formatPet(bad)}`,
                mend: `have ${condition.variable} ${condition.allowed.join(' or ')} before, and kept so`,
              };
            }
          }
        }
      }
    }
  },
  examples: {
    violates: {
      campaign: `${work}event joint-turns at="2031-05-01T10:20:00Z" agreed=#true { leaves wing-joint turning }\n`,
      timeline,
    },
    satisfies: { campaign: work, timeline },
  },
});
