import { STOCK_RESPONSES } from '../../response/any-response.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (leadsTo: string): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
response suit-leak "Suit leaks" trigger="pressure falls"${leadsTo} { report; minutes low=1 likely=2 high=3 }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const replacementStillLeadsHome = defineRule({
  title: 'A response that takes the place of a stock one leads home where that one does',
  broken: 'A response that takes the place of a stock one no longer leads home',
  severity: 'error',
  why: 'The stock set leads home where staying outside is the danger: a leak, water in the helmet, a partner who does not answer. Whoever means to go on with work then has to say so as a waiver.',
  source: 'common practice',
  *check(facts) {
    for (const response of facts.campaign.responses) {
      const stock = STOCK_RESPONSES.find((one) => one.id === response.id);
      if (stock === undefined || stock.leadsTo === null || response.leadsTo !== 'go-on') continue;
      yield {
        where: { span: response.span },
        why: `"${response.title}" says leads-to=go-on; the stock response ${stock.id} leads to ${stock.leadsTo}`,
        mend: `write leads-to=${stock.leadsTo}, or leave it out; or give the response a name of its own`,
      };
    }
  },
  examples: {
    violates: { campaign: campaign(' leads-to=go-on'), timeline },
    satisfies: { campaign: campaign(''), timeline },
  },
});
