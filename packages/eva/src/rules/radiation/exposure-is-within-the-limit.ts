import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = (limit: string): string => `
${exampleOrbit(120)}field-region threshold="24000 nT" at=ground exposure="${limit}"
window weak "Weak field" computed=field-region
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const exposureIsWithinTheLimit = defineRule({
  title: 'Nobody is outside in the weak field for longer than the operator allows',
  broken: 'Somebody is outside in the weak field for longer than is allowed',
  severity: 'error',
  why: 'The operator limits the time outside where trapped particles come down lowest. The minutes are a proxy for exposure; dosimeters and the flight surgeon have the last word.',
  source: 'common practice',
  *check(facts) {
    const limitS = facts.campaign.sky.fieldExposureS;
    const window = facts.campaign.windows.find(({ computed }) => computed?.what === 'field-region' && computed.filled);
    if (limitS === null) return;
    for (const { eva, courses } of facts.evas) {
      if (window === undefined) {
        yield {
          severity: 'unknown',
          where: { eva: eva.eva },
          why: `the limit is ${formatDuration(limitS)} in one EVA, and no window tells when the field is weak`,
          mend: 'write window weak-field computed=field-region',
        };
        continue;
      }
      for (const person of facts.outside) {
        const course = courses.get(person.id) ?? [];
        const outS = course[0]?.startS;
        const inS = course.at(-1)?.endS;
        if (outS === undefined || inS === undefined) continue;
        let insideS = 0;
        for (const [from, to] of window.intervals) {
          const a = Math.max(outS, (from - eva.petZeroUtcMs) / 1000 - window.padS);
          const b = Math.min(inS, (to - eva.petZeroUtcMs) / 1000 + window.padS);
          insideS += Math.max(0, b - a);
        }
        if (insideS <= limitS) continue;
        yield {
          where: { eva: eva.eva, person: person.id, petS: outS, span: window.span },
          why: `${person.id} is outside in ${window.title} for ${formatDuration(insideS)}, pads counted; the limit is ${formatDuration(limitS)} (over by ${formatDuration(insideS - limitS)})`,
          mend: 'move the EVA to hours whose revolutions pass the region less, or end it earlier',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('10 min'), timeline },
    satisfies: { campaign: campaign('40 min'), timeline },
  },
});
