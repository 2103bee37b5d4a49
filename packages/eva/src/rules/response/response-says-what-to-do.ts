import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (steps: string): string => `
hardware b1 kind=bolt at=bay state=torqued
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect b1 } }
response stuck "Bolt is stuck" trigger="no turns" kind=bolt {${steps} minutes low=1 likely=3 high=8 }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const responseSaysWhatToDo = defineRule({
  title: 'Every response of the campaign says what is done, step by step',
  broken: 'A response does not say what to do',
  severity: 'warning',
  why: 'A trigger and minutes are a worry, not a response. Who has the trouble needs the first thing to do, in words, at once.',
  source: 'common practice',
  *check(facts) {
    for (const response of facts.campaign.responses) {
      if (response.steps.length > 0) continue;
      yield {
        where: { span: response.span },
        why: `"${response.title}" has a trigger${response.duration === null ? '' : ' and minutes'} and no sentences`,
        mend: 'write its steps, first thing first; "it" is the piece in hand',
      };
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign(' inspect it; release it;'), timeline },
  },
});
