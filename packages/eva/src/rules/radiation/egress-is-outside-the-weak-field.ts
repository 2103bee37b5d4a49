import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = (node: 120 | 240): string => `
${exampleOrbit(node)}field-region threshold="24000 nT" at=ground
window weak "Weak field" computed=field-region pad="20 s"
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const egressIsOutsideTheWeakField = defineRule({
  title: 'Nobody goes out during a pass through the region of weak field',
  broken: 'Egress falls into a pass through the region of weak field',
  severity: 'warning',
  why: 'A weak field marks where trapped particles come down lowest; an EVA that can begin a quarter of an hour later need not begin there. Field strength is a proxy: it measures no dose and knows no solar events.',
  source: 'common practice',
  *check(facts) {
    const regions = facts.campaign.windows.filter(
      ({ computed }) => computed?.what === 'field-region' && computed.filled,
    );
    for (const { eva } of facts.evas) {
      const passages = eva.passages.filter(({ kind }) => kind === 'egress');
      if (passages.length === 0) continue;
      const startS = Math.min(...passages.map((passage) => passage.startS));
      const endS = Math.max(...passages.map((passage) => passage.endS));
      for (const window of regions) {
        const pass = window.intervals
          .map(
            ([from, to]) =>
              [(from - eva.petZeroUtcMs) / 1000 - window.padS, (to - eva.petZeroUtcMs) / 1000 + window.padS] as const,
          )
          .find(([from, to]) => from < endS && startS < to);
        if (pass === undefined) continue;
        yield {
          where: { eva: eva.eva, petS: startS, span: window.span },
          why: `egress from PET ${formatPet(startS)} to ${formatPet(endS)} meets ${window.title} from ${formatPet(Math.round(pass[0]))} to ${formatPet(Math.round(pass[1]))}, its pad of ${formatDuration(window.padS)} counted`,
          mend: `let egress begin ${formatDuration(Math.ceil((pass[1] - startS) / 60) * 60)} later`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(120), timeline },
    satisfies: { campaign: campaign(240), timeline },
  },
});
