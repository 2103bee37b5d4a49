import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';

const campaign = `
task look rank=1 eva=day { stint see who=EV1 at=porch { inspect porch } }
`;
const timeline = (second: string): string => `eva day
EV1 0:00-0:05 out
EV2 ${second} out
EV1 0:10-0:14 look/see
EV2 0:20-0:25 in
EV1 0:25-0:30 in
hatch 0:30-0:35`;

export const onePersonAtATimeThroughTheHatch = defineRule({
  title: 'One person at a time goes through the hatch, and it is closed last',
  broken: 'Two are in the hatch at once, or nobody closes it',
  severity: 'error',
  why: 'Two people and two lines in one opening jam; the last one in closes it behind everybody.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      const passages = [...eva.passages].sort((a, b) => a.startS - b.startS || a.endS - b.endS);
      for (let at = 1; at < passages.length; at++) {
        const before = passages[at - 1];
        const here = passages[at];
        if (before === undefined || here === undefined || here.startS >= before.endS) continue;
        yield {
          where: { eva: eva.eva, person: here.person, petS: here.startS },
          why: `${here.person ?? 'closing'} starts at PET ${formatPet(here.startS)} while ${before.person ?? 'closing'} is in the hatch until ${formatPet(before.endS)}`,
          mend: `start at PET ${formatPet(before.endS)}`,
        };
      }
      const closing = passages.find((passage) => passage.kind === 'close-hatch');
      if (closing === undefined) {
        yield {
          where: { eva: eva.eva, petS: eva.bothInS },
          why: 'nothing in the timeline closes the hatch',
          mend: 'plan the closing of the hatch',
        };
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:03-0:08') },
    satisfies: { campaign, timeline: timeline('0:05-0:10') },
  },
});
