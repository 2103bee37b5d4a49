import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (limit: string): string => `
hardware plug kind=data-connector at=bay state=mated
clock cold "Box without heater power" limit="${limit}" kind=difference sense=most on-stop=reset { starts plug demated; stops plug mated }
task open rank=1 eva=day {
    stint pull who=EV1 at=bay { demate plug }
    stint push who=EV1 at=bay { mate plug }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:16 open/pull
EV1 0:40-0:42 open/push
EV1 0:42-0:46 bay > porch
EV2 0:46-0:51 in
EV1 0:51-0:56 in
hatch 0:56-1:01`;

export const clockIsKept = defineRule({
  title: 'A clock that runs is stopped within its limit',
  broken: 'A clock runs past its limit',
  severity: 'error',
  why: 'A unit without power cools, a line without flow heats: the limit is how long it stands that.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, clocks } of facts.evas) {
      for (const run of clocks) {
        if (run.stopS === null) continue;
        const lengthS = run.stopS - run.startS;
        const over = run.clock.sense === 'most' ? lengthS - run.clock.limitS : run.clock.limitS - lengthS;
        if (over <= 0) continue;
        yield {
          where: { eva: eva.eva, stint: run.stoppedBy, petS: run.startS, span: run.clock.span },
          why: `${run.clock.title} runs from PET ${formatPet(run.startS)} to ${formatPet(run.stopS)}, ${formatDuration(lengthS)}; the limit is ${run.clock.sense === 'most' ? 'at most' : 'at least'} ${formatDuration(run.clock.limitS)} (off by ${formatDuration(over)})`,
          mend: `bring ${run.startedBy} and ${run.stoppedBy ?? ''} ${formatDuration(over)} ${run.clock.sense === 'most' ? 'closer together' : 'farther apart'}`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('15 min'), timeline },
    satisfies: { campaign: campaign('45 min'), timeline },
  },
});
