import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
request bus-off owner=power inhibits=2 lead="5 min" verify="1 min" clear="1 min" longest="1 h" status=agreed
hardware plug kind=power-connector at=bay state=mated controls=bus-off
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug } }
`;
const timeline = (hold: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 open/pull
${hold}
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const inhibitsAreVerifiedBeforeUse = defineRule({
  title: 'Hazardous hardware is made safe, and that is verified, before it is touched',
  broken: 'Hazardous hardware is touched without a verified request',
  severity: 'error',
  why: 'A live connector can arc, burn and inject current; a pressurised line can spray. The request is set, verified by its owner, and stays in force until the work is done.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, steps } of facts.evas) {
      for (const step of steps) {
        for (const control of step.effects?.controls ?? []) {
          if (step.index !== control.fromStep) continue;
          const startS = step.startS;
          const endS = step.planned.stepEndsS[control.toStep - 1] ?? step.planned.endS;
          const request = facts.campaign.requests.find((candidate) => candidate.id === control.request);
          const hold = eva.holds.find(
            (candidate) =>
              candidate.request === control.request && candidate.firstUseS <= startS && endS <= candidate.lastUseS,
          );
          const where = {
            eva: eva.eva,
            person: step.who,
            stint: step.stint.key,
            step: step.index,
            petS: startS,
            span: step.stint.steps[step.index]?.span ?? null,
          };
          if (hold === undefined) {
            yield {
              where,
              why: `${control.request} is not in force over PET ${formatPet(startS)} to ${formatPet(endS)}: ${control.origin.words}`,
              mend: `plan ${control.request} to be set and verified before`,
            };
            continue;
          }
          const leadS = (request?.setLeadS ?? 0) + (request?.verifyS ?? 0);
          if (hold.verifiedS > startS || hold.firstUseS - hold.askS < leadS) {
            yield {
              where,
              why: `asked at PET ${formatPet(hold.askS)}, verified at ${formatPet(hold.verifiedS)}, used from ${formatPet(hold.firstUseS)}; setting and verifying take ${formatDuration(leadS)}`,
              mend: `ask ${formatDuration(leadS - (hold.firstUseS - hold.askS))} earlier`,
            };
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('request bus-off 0:12 0:15 0:14-0:20 0:21') },
    satisfies: { campaign, timeline: timeline('request bus-off 0:06 0:12 0:14-0:20 0:21') },
  },
});
