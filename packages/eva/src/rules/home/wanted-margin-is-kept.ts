import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (margin: string): string => `
limits { margin "${margin}" }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41
wall 1:00 longest EVA`;

export const wantedMarginIsKept = defineRule({
  title: 'The plan leaves the wanted margin before the wall',
  broken: 'The plan leaves less margin than is wanted',
  severity: 'warning',
  why: 'Work runs over more often than under. The margin is what the operator wants to keep for that.',
  source: 'common practice',
  *check(facts) {
    const wantedS = facts.campaign.limits.marginS;
    if (wantedS === null) return;
    for (const { eva } of facts.evas) {
      if (eva.wall === null) continue;
      const marginS = eva.wall.petS - eva.bothInS;
      if (marginS >= wantedS || marginS < 0) continue;
      yield {
        where: { eva: eva.eva, petS: eva.bothInS },
        why: `both in at PET ${formatPet(eva.bothInS)} leaves ${formatDuration(marginS)}; wanted are ${formatDuration(wantedS)}`,
        mend: `take ${formatDuration(wantedS - marginS)} of work out`,
      };
    }
  },
  examples: {
    violates: { campaign: campaign('30 min'), timeline },
    satisfies: { campaign: campaign('15 min'), timeline },
  },
});
