import { formatDuration } from '@handrail/quantity/time';
import type { WayHome } from '../../wayhome/way-home-plan.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (limit: string): string => `
limits { home-within "${limit}" }
task look rank=1 eva=day { stint see who=EV1 at=tip { inspect tip } }
`;
const timeline = `${OUT}EV1 0:10-0:18 porch > bay > tip
EV1 0:18-0:22 look/see
EV1 0:22-0:30 tip > bay > porch
EV2 0:30-0:35 in
EV1 0:35-0:40 in
hatch 0:40-0:45`;

export const assistIsWithinTheReturnLimit = defineRule({
  title: "Once the partner is there, the towed way to the hatch is within the operator's return limit",
  broken: 'A person who cannot move is too far from the hatch',
  severity: 'error',
  why: 'The limit is what a suit covers on the way back. Whoever cannot move is freed and towed, at the pace of a large load; how soon the partner is there has a limit of its own.',
  source: 'common practice',
  *check(facts) {
    const limitS = facts.campaign.limits.homeWithinS;
    if (limitS === null) return;
    for (const evaFacts of facts.evas) {
      let farthest: { readonly petS: number; readonly towS: number; readonly way: WayHome } | null = null;
      for (const { petS, worst } of wayHomeOf(facts, evaFacts).samples) {
        const { tow } = worst.assist;
        if (tow !== null && (farthest === null || tow.towS > farthest.towS)) farthest = { petS, ...tow };
      }
      if (farthest === null || farthest.towS <= limitS) continue;
      const { petS, towS, way } = farthest;
      yield {
        where: { eva: evaFacts.eva.eva, person: way.people[0]?.person ?? null, petS },
        why: `freed and towed to the hatch takes ${formatDuration(towS)} (90 %), the limit is ${formatDuration(limitS)} (over by ${formatDuration(towS - limitS)}); ${way.words}`,
        mend: 'work nearer to the hatch, or agree a longer limit with the suit maker',
      };
    }
  },
  examples: {
    violates: { campaign: campaign('10 min'), timeline },
    satisfies: { campaign: campaign('30 min'), timeline },
  },
});
