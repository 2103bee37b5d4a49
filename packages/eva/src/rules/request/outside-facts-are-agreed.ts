import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (status: string): string => `
request bus-off owner=power inhibits=2 lead="5 min" verify="1 min" clear="1 min" longest="1 h" status=${status}
hardware plug kind=power-connector at=bay state=mated controls=bus-off
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 open/pull
request bus-off 0:06 0:12 0:14-0:20 0:21
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const outsideFactsAreAgreed = defineRule({
  title: 'What the plan takes for granted from others has been agreed with them',
  broken: 'The plan rests on something that is not agreed',
  severity: 'warning',
  why: 'A request or event that its owner has not agreed to is a wish. The plan is not ready to be approved while it rests on one.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, valueBefore, writes } of facts.evas) {
      for (const hold of eva.holds) {
        const request = facts.campaign.requests.find((candidate) => candidate.id === hold.request);
        if (request === undefined || request.status === 'agreed') continue;
        yield {
          ...(request.status === 'refused' ? { severity: 'error' as const } : {}),
          where: { eva: eva.eva, petS: hold.askS, span: request.span },
          why: `${request.title} is ${request.status} with ${request.owner}, and the plan uses it`,
          mend: `get ${request.owner} to agree, then write status=agreed`,
        };
      }
      for (const event of facts.campaign.events) {
        if (event.agreed) continue;
        const within = writes.some((write) => write.by === event.id);
        const used = event.leaves.some((leave) => valueBefore(leave.variable, 0) === leave.value);
        if (!within && !used) continue;
        yield {
          where: { eva: eva.eva, span: event.span },
          why: `${event.title} is not agreed, and the plan rests on ${event.leaves.map((leave) => `${leave.variable} ${leave.value}`).join(', ')}`,
          mend: 'get it agreed, then write agreed=#true',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('asked'), timeline },
    satisfies: { campaign: campaign('agreed'), timeline },
  },
});
