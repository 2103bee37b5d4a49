import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (minutes: string): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
response lost "Something floats off" trigger="an item is loose" {${minutes} }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const responseTimeIsStated = defineRule({
  title: 'Every response says how long it takes',
  broken: 'A response does not say how long it takes',
  severity: 'warning',
  why: 'Without its time nobody can tell what trouble costs: which clock runs out, which window is missed, whether the way home still fits.',
  source: 'common practice',
  *check(facts) {
    for (const response of facts.campaign.responses) {
      if (response.duration !== null || response.steps.some((step) => step.agreedS !== null)) continue;
      yield {
        where: { span: response.span },
        why: `"${response.title}" states no minutes, so what it costs cannot be told`,
        mend: 'write minutes low=… likely=… high=… in the response',
      };
    }
  },
  examples: {
    violates: { campaign: campaign(' probability "1 %"'), timeline },
    satisfies: { campaign: campaign(' minutes low=1 likely=3 high=8'), timeline },
  },
});
