import { allResponses } from '../../response/any-response.ts';
import { occasionsOf } from '../../response/concerned.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (work: string): string => `
hardware b1 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect ${work} } }
response stuck "Bolt is stuck" trigger="no turns" kind=bolt { inspect it; minutes low=1 likely=3 high=8 }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const responseHasAnOccasion = defineRule({
  title: 'Every response of the campaign can come up somewhere in the plan',
  broken: 'A response cannot come up anywhere in this plan',
  severity: 'note',
  why: 'A response for hardware that nobody touches is kit carried for nothing, or a kind that is named wrongly, so that the trouble it was meant for is not covered.',
  source: 'common practice',
  *check(facts) {
    for (const response of allResponses(facts.campaign)) {
      if (response.from === 'stock' || facts.evas.length === 0) continue;
      // The vehicle's own hatch is closed on every EVA.
      if (response.kinds.includes('hatch')) continue;
      const somewhere = facts.evas.some(
        (evaFacts) =>
          occasionsOf(facts.campaign, facts.stints, response, wayHomeOf(facts, evaFacts).progress.segments).length > 0,
      );
      if (somewhere) continue;
      yield {
        where: { span: facts.campaign.responses.find((one) => one.id === response.id)?.span ?? null },
        why: `"${response.title}" is for ${response.stint ?? (response.kinds.length === 0 ? 'anybody on an arm' : `work on a ${response.kinds.join(' or a ')}`)}, and none is in this plan`,
        mend: 'name the kind or the stint that it is meant for, or take it out',
      };
    }
  },
  examples: {
    violates: { campaign: campaign('bay'), timeline },
    satisfies: { campaign: campaign('b1'), timeline },
  },
});
