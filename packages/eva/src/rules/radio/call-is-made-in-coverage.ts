import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
window gap pad="20 s" shown-as=gap source="example" { interval "2031-05-01T10:14:00Z" "2031-05-01T10:20:00Z" }
request bus-off owner=power inhibits=2 lead="2 min" verify="1 min" clear="1 min" longest="1 h" status=agreed
hardware plug kind=power-connector at=bay state=mated controls=bus-off
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug } }
`;
const timeline = (work: string, hold: string): string => `${OUT}EV1 0:10-0:14 porch > bay
request bus-off ${hold}
EV1 ${work} open/pull
EV1 0:40-0:44 bay > porch
EV2 0:44-0:49 in
EV1 0:49-0:54 in
hatch 0:54-0:59`;

export const callIsMadeInCoverage = defineRule({
  title: 'The call that something is safe falls where there is coverage',
  broken: 'A call that is waited for falls into a coverage gap',
  severity: 'warning',
  why: 'A verification that cannot be heard holds the crew up, or tempts them to go on without it.',
  source: 'common practice',
  *check(facts) {
    const gaps = facts.campaign.windows.filter((window) => window.shownAs === 'gap');
    for (const { eva } of facts.evas) {
      for (const hold of eva.holds) {
        for (const window of gaps) {
          const gap = window.intervals
            .map(
              ([from, to]) =>
                [(from - eva.petZeroUtcMs) / 1000 - window.padS, (to - eva.petZeroUtcMs) / 1000 + window.padS] as const,
            )
            .find(([from, to]) => from < hold.verifiedS && hold.verifiedS < to);
          if (gap === undefined) continue;
          const request = facts.campaign.requests.find((candidate) => candidate.id === hold.request);
          yield {
            where: { eva: eva.eva, petS: hold.verifiedS, span: request?.span ?? null },
            why: `${request?.title ?? hold.request} is to be verified at PET ${formatPet(hold.verifiedS)}, in ${window.title} from ${formatPet(Math.round(gap[0]))} to ${formatPet(Math.round(gap[1]))}`,
            mend: `ask early enough to hear it by PET ${formatPet(Math.floor(gap[0] / 60) * 60)}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:18-0:24', '0:14 0:17 0:18-0:24 0:25') },
    satisfies: { campaign, timeline: timeline('0:18-0:24', '0:08 0:12 0:18-0:24 0:25') },
  },
});
