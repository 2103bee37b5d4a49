import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (limit: string): string => `
limits { home-within "${limit}" }
hardware line kind=cable at=tip state=stowed { state retainer none }
task look rank=1 eva=day { stint see who=EV1 at=tip { lay line; gather line } }
`;
const timeline = `${OUT}EV1 0:10-0:18 porch > bay > tip
EV1 0:18-0:30 look/see
EV1 0:30-0:38 tip > bay > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53`;

export const abortIsWithinTheReturnLimit = defineRule({
  title: "Whoever has to come in now is at the hatch within the operator's return limit",
  broken: 'Somebody who has to come in now is not at the hatch in time',
  severity: 'error',
  why: 'The limit is what a suit covers on the way back. Getting out of the restraint, off the arm, and closing what may never be left count as well as the way.',
  source: 'common practice',
  *check(facts) {
    const limitS = facts.campaign.limits.homeWithinS;
    if (limitS === null) return;
    for (const evaFacts of facts.evas) {
      const { samples } = wayHomeOf(facts, evaFacts);
      const least = samples
        .filter((sample) => sample.returnMarginAtMostS !== null)
        .reduce<(typeof samples)[number] | null>(
          (worst, one) =>
            worst === null || (one.returnMarginAtMostS ?? 0) < (worst.returnMarginAtMostS ?? 0) ? one : worst,
          null,
        );
      if (least === null || (least.returnMarginAtMostS ?? 0) >= 0) continue;
      const { atHatchS, way } = least.worst.abort;
      yield {
        where: { eva: evaFacts.eva.eva, petS: least.petS },
        why: `at the hatch only after ${formatDuration(atHatchS ?? 0)} (90 %), the limit is ${formatDuration(limitS)}; ${way?.words ?? ''}`,
        mend: 'work nearer to the hatch, leave less open that may never be left, or agree a longer limit',
      };
    }
  },
  examples: {
    violates: { campaign: campaign('12 min'), timeline },
    satisfies: { campaign: campaign('30 min'), timeline },
  },
});
