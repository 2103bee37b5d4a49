import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const work = `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

const WANTED = [
  ['homeWithinS', 'home-within', 'how far from the hatch a person may be'],
  ['partnerWithinS', 'partner-within', 'how far apart the two may be'],
  ['gloveCheckEveryS', 'glove-check', 'how often gloves are looked at'],
  ['padCheckEveryS', 'pad-check', 'how often the helmet pad is felt'],
  ['reactionS', 'reaction', 'how long it takes to notice and act'],
  ['marginS', 'margin', 'the margin wanted before the wall'],
] as const;

export const limitsAreStated = defineRule({
  title: "The operator's limits that the plan rests on are stated",
  broken: 'A limit of the operator is not stated',
  severity: 'warning',
  why: 'Nothing that can hurt has a default here. What is not stated cannot be checked, and the plan claims less.',
  source: 'common practice',
  *check(facts) {
    if (facts.campaign.vehicle.hatch === null) return;
    for (const [key, node, meaning] of WANTED) {
      if (facts.campaign.limits[key] !== null) continue;
      yield {
        where: { span: facts.campaign.limits.span },
        why: `${meaning} is not stated`,
        mend: `write limits { ${node} "…" }`,
      };
    }
  },
  examples: {
    violates: { campaign: work, timeline },
    satisfies: {
      campaign: `${work}limits { home-within "30 min"; partner-within "20 min"; glove-check "1 h"; pad-check "1 h"; reaction "30 s"; margin "15 min" }\n`,
      timeline,
    },
  },
});
