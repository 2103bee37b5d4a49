import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (interval: string): string => `
limits { glove-check "${interval}" }
task look rank=1 eva=day {
    stint first who=EV1 partner=EV2 at=porch partner-at=porch { glove-check }
    stint second who=EV1 partner=EV2 at=porch partner-at=porch { glove-check }
}
`;
const timeline = `${OUT}EV1+EV2 0:10-0:12 look/first
EV1+EV2 1:10-1:12 look/second
EV2 1:20-1:25 in
EV1 1:25-1:30 in
hatch 1:30-1:35`;

export const gloveCheckIsMadeInTime = defineRule({
  title: 'Gloves are looked at at the stated interval',
  broken: 'Gloves are not looked at for too long',
  severity: 'warning',
  why: 'A cut in the outer layers is found by looking, before it reaches the bladder; one that is found ends the EVA of that person.',
  source: 'common practice',
  *check(facts) {
    const everyS = facts.campaign.limits.gloveCheckEveryS;
    for (const { eva, courses, steps } of facts.evas) {
      for (const person of facts.outside) {
        const course = courses.get(person.id) ?? [];
        if (course.length === 0) continue;
        if (everyS === null) {
          yield {
            severity: 'unknown',
            where: { eva: eva.eva, person: person.id },
            why: 'the interval is not stated (limits { glove-check "…" })',
          };
          continue;
        }
        const out = course.find((stretch) => stretch.kind === 'passage')?.endS ?? 0;
        const back = course.findLast((stretch) => stretch.kind === 'passage')?.startS ?? eva.bothInS;
        const checks = steps
          .filter(
            (step) => step.stint.steps[step.index]?.verb === 'glove-check' && step.planned.assigned.includes(person.id),
          )
          .map((step) => step.endS);
        const instants = [out, ...checks.filter((petS) => petS > out && petS < back), back].sort((a, b) => a - b);
        for (let at = 1; at < instants.length; at++) {
          const gapS = (instants[at] as number) - (instants[at - 1] as number);
          if (gapS <= everyS) continue;
          yield {
            where: {
              eva: eva.eva,
              person: person.id,
              petS: (instants[at - 1] as number) + everyS,
              span: facts.campaign.limits.span,
            },
            why: `${person.id} goes from PET ${formatPet(instants[at - 1] as number)} to ${formatPet(instants[at] as number)} without one, ${formatDuration(gapS)}; the interval is ${formatDuration(everyS)}`,
            mend: `add a step "glove-check" by PET ${formatPet((instants[at - 1] as number) + everyS)}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('45 min'), timeline },
    satisfies: { campaign: campaign('1 h'), timeline },
  },
});
