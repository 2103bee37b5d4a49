import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (limit: string): string => `
limits { partner-within "${limit}" }
task look rank=1 eva=day {
    stint see-one who=EV1 at=tip { inspect tip }
    stint see-two who=EV2 at=side { inspect side }
}
`;
const timeline = `${OUT}EV1 0:10-0:18 porch > bay > tip
EV2 0:10-0:15 porch > side
EV2 0:15-0:30 look/see-two
EV1 0:18-0:30 look/see-one
EV2 0:30-0:35 side > porch
EV1 0:30-0:38 tip > bay > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53`;

export const partnerIsWithinReach = defineRule({
  title: 'The two are never farther apart than the stated minutes',
  broken: 'The two are too far apart',
  severity: 'error',
  why: "Each is the other's rescue. The partner has to be there before the trouble is over for good.",
  source: 'common practice',
  *check(facts) {
    const limitS = facts.campaign.limits.partnerWithinS;
    for (const { eva, courses, travel } of facts.evas) {
      for (const [index, first] of facts.outside.entries()) {
        for (const second of facts.outside.slice(index + 1)) {
          const told = new Set<string>();
          for (const one of courses.get(first.id) ?? []) {
            for (const two of courses.get(second.id) ?? []) {
              const startS = Math.max(one.startS, two.startS);
              if (startS >= Math.min(one.endS, two.endS) || one.kind !== 'work' || two.kind !== 'work') continue;
              const pair = [one.place, two.place].sort().join(' and ');
              if (told.has(pair)) continue;
              if (limitS === null) {
                yield {
                  severity: 'unknown',
                  where: { eva: eva.eva },
                  why: 'the operator\'s limit is not stated (limits { partner-within "…" })',
                };
                return;
              }
              const apartS = travel.secondsBetween(two.place, one.place, null, Math.max(first.pace, second.pace));
              if (apartS !== null && apartS <= limitS) continue;
              told.add(pair);
              yield {
                where: {
                  eva: eva.eva,
                  person: first.id,
                  stint: one.stint?.key ?? null,
                  petS: startS,
                  span: one.stint?.span ?? null,
                },
                why: `${first.id} at ${one.place} and ${second.id} at ${two.place} from PET ${formatPet(startS)} are ${apartS === null ? 'without a way to each other' : formatDuration(apartS)} apart; the limit is ${formatDuration(limitS)}`,
                mend: 'order the two stints so that they are nearer at that time',
              };
            }
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('10 min'), timeline },
    satisfies: { campaign: campaign('20 min'), timeline },
  },
});
