import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware plug kind=data-connector at=bay state=mated
clock cold "Box without heater power" limit="45 min" kind=difference sense=most on-stop=reset { starts plug demated; stops plug mated }
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug${last} } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 open/pull
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const clockIsStopped = defineRule({
  title: 'A clock that is started is stopped in the same EVA',
  broken: 'A clock is started and nothing stops it',
  severity: 'error',
  why: 'Nobody is outside to stop it afterwards: a limit that nothing in the plan stops runs out for certain.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, clocks } of facts.evas) {
      for (const run of clocks) {
        if (run.stopS !== null || run.clock.sense !== 'most') continue;
        yield {
          where: { eva: eva.eva, stint: run.startedBy, petS: run.startS, span: run.clock.span },
          why: `${run.clock.title} is started by ${run.startedBy} at PET ${formatPet(run.startS)}; nothing in this EVA makes ${run.clock.stop.variable} ${run.clock.stop.values.join(' or ')}`,
          mend: `plan the work that leaves ${run.clock.stop.variable} ${run.clock.stop.values.join(' or ')}, or do not start it`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('; mate plug'), timeline },
  },
});
