import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (longest: string): string => `
request bus-off owner=power inhibits=2 lead="5 min" verify="1 min" clear="1 min" longest="${longest}" status=agreed
hardware plug kind=power-connector at=bay state=mated controls=bus-off
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:40 open/pull
request bus-off 0:06 0:12 0:14-0:40 0:41
EV1 0:40-0:44 bay > porch
EV2 0:44-0:49 in
EV1 0:49-0:54 in
hatch 0:54-0:59`;

export const requestIsNotHeldTooLong = defineRule({
  title: 'What is asked of the vehicle is given back in time',
  broken: 'A request is held too long',
  severity: 'error',
  why: 'What is switched off for the crew is needed by somebody: a heater, a pump, a radio. Its owner has said for how long it can be spared.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const hold of eva.holds) {
        const request = facts.campaign.requests.find((candidate) => candidate.id === hold.request);
        if (request === undefined || request.longestHoldS === null) continue;
        const heldS = hold.clearedS - hold.verifiedS;
        if (heldS <= request.longestHoldS) continue;
        yield {
          where: { eva: eva.eva, petS: hold.verifiedS, span: request.span },
          why: `${request.title} is held from PET ${formatPet(hold.verifiedS)} to ${formatPet(hold.clearedS)}, ${formatDuration(heldS)}; ${request.owner} allows ${formatDuration(request.longestHoldS)}`,
          mend: `bring the work under it closer together by ${formatDuration(heldS - request.longestHoldS)}`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('20 min'), timeline },
    satisfies: { campaign: campaign('40 min'), timeline },
  },
});
