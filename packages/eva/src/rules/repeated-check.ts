import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { RuleMatch } from './define-rule.ts';
import { OUT } from './example-opening.ts';
import type { RuleFacts } from './rule-facts.ts';

/** A check that everybody outside makes again and again: between two of them no more than the stated interval may pass. */
export interface RepeatedCheck {
  /** The verb of its step and the node of its limit. */
  readonly verb: 'glove-check' | 'pad-check';
  readonly limit: 'gloveCheckEveryS' | 'padCheckEveryS';
}

export function* repeatedCheck(facts: RuleFacts, { verb, limit }: RepeatedCheck): Iterable<RuleMatch> {
  const everyS = facts.campaign.limits[limit];
  for (const { eva, courses, steps } of facts.evas) {
    for (const person of facts.outside) {
      const course = courses.get(person.id) ?? [];
      if (course.length === 0) continue;
      if (everyS === null) {
        yield {
          severity: 'unknown',
          where: { eva: eva.eva, person: person.id },
          why: `the interval is not stated (limits { ${verb} "…" })`,
        };
        continue;
      }
      const out = course.find((stretch) => stretch.kind === 'passage')?.endS ?? 0;
      const back = course.findLast((stretch) => stretch.kind === 'passage')?.startS ?? eva.bothInS;
      const checks = steps
        .filter((step) => step.stint.steps[step.index]?.verb === verb && step.planned.assigned.includes(person.id))
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
          mend: `add a step "${verb}" by PET ${formatPet((instants[at - 1] as number) + everyS)}`,
        };
      }
    }
  }
}

/** Two people who make the check one hour apart, with the limit at `interval`. */
export function repeatedCheckExample(
  verb: RepeatedCheck['verb'],
  interval: string,
): { readonly campaign: string; readonly timeline: string } {
  return {
    campaign: `
limits { ${verb} "${interval}" }
task look rank=1 eva=day {
    stint first who=EV1 partner=EV2 at=porch partner-at=porch { ${verb} }
    stint second who=EV1 partner=EV2 at=porch partner-at=porch { ${verb} }
}
`,
    timeline: `${OUT}EV1+EV2 0:10-0:12 look/first
EV1+EV2 1:10-1:12 look/second
EV2 1:20-1:25 in
EV1 1:25-1:30 in
hatch 1:30-1:35`,
  };
}
