import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (limit: string): string => `
hardware unit kind=box at=bay state=fastened
hardware plug kind=power-connector at=bay of=unit state=mated
clock cold limit="${limit}" sense=most { starts plug demated; stops plug mated }
unit-temperature unit clock=cold limit-low="45 min" limit-likely="1 h" limit-high="1 h 30 min" source="invented"
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const clockIsWithinWhatTheUnitBears = defineRule({
  title: 'The clock of a unit without power is no longer than the unit bears',
  broken: 'A clock allows a unit to stay without power longer than it bears',
  severity: 'error',
  why: 'The plan keeps to the clock. If the clock is longer than the worst case of the unit, a plan within it may still lose the unit.',
  source: '[INCROPERA7]',
  *check(facts) {
    for (const { hardware, clock: clockId, limit, span } of facts.campaign.unitTemperatures) {
      const clock = facts.campaign.clocks.find((candidate) => candidate.id === clockId);
      const unit = facts.pieces.get(hardware);
      if (clock === undefined || unit === undefined) continue;
      if (clock.sense !== 'most') {
        yield {
          where: { span },
          why: `${clock.title} counts at least, and a unit without power wants at most`,
          mend: 'name the clock that limits it',
        };
        continue;
      }
      if (limit.worstS === null || clock.limitS <= limit.worstS) continue;
      const meets = limit.meets === null ? '' : `, the ${limit.meets} temperature first`;
      yield {
        where: { span: clock.span },
        why: `${clock.title} allows ${formatDuration(clock.limitS)}; ${unit.title} bears ${formatDuration(Math.floor(limit.worstS))} in the worst case${meets}${
          limit.likelyS === null ? '' : ` (likely ${formatDuration(Math.floor(limit.likelyS))})`
        }`,
        mend: `limit="${formatDuration(Math.floor(limit.worstS / 60) * 60)}" on the clock ${clock.id}`,
      };
    }
  },
  examples: {
    violates: { campaign: campaign('1 h'), timeline },
    satisfies: { campaign: campaign('45 min'), timeline },
  },
});
