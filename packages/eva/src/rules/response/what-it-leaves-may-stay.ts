import type { Response } from '../../campaign/campaign.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import type { RuleFacts } from '../rule-facts.ts';

const campaign = (value: string): string => `
hardware line kind=cable at=bay state=stowed { state retainer none }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect line } }
response snarl "Cable is tangled" trigger="it does not come" kind=cable leaves-it=${value} { inspect it; minutes low=1 likely=3 high=8 }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const whatItLeavesMayStay = defineRule({
  title: 'What a response leaves when it does not work may stay so for the night',
  broken: 'A response leaves something in a state that may not be left',
  severity: 'error',
  why: 'A response ends with the crew going on or going home. What it gives up on stays as it is, and nobody comes back to it tonight.',
  source: 'common practice',
  *check(facts) {
    for (const response of facts.campaign.responses) {
      for (const [words, safe] of leftBy(facts, response)) {
        if (safe !== null && safe !== 'never') continue;
        yield {
          severity: safe === null ? 'unknown' : 'error',
          where: { span: response.span },
          why:
            safe === null
              ? `"${response.title}" leaves ${words}, and its kind does not say how long that may stay`
              : `"${response.title}" leaves ${words}, which may not be left`,
          mend: 'add the steps that bring it into a state that may be left, and name that state',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('laid'), timeline },
    satisfies: { campaign: campaign('stowed'), timeline },
  },
});

/** Each state that it leaves, in words, and until when it may stay; null: its kind does not tell. */
function* leftBy(facts: RuleFacts, response: Response): Iterable<readonly [string, string | null]> {
  const { appliesTo, leavesIt } = response;
  if (leavesIt !== null && appliesTo !== null && 'kind' in appliesTo) {
    const kind = facts.library.kinds.get(appliesTo.kind);
    yield [`a ${kind?.title.toLowerCase() ?? appliesTo.kind} ${leavesIt}`, kind?.aspects[0]?.safe[leavesIt] ?? null];
  }
  for (const { variable: id, value } of response.leaves) {
    const variable = facts.hardware.variables.get(id);
    if (variable === undefined || variable.about !== 'aspect') continue;
    const kind = facts.library.kinds.get(facts.pieces.get(variable.of)?.kind ?? '');
    const aspectId = id === variable.of ? kind?.aspects[0]?.id : id.slice(variable.of.length + 1);
    const aspect = kind?.aspects.find((one) => one.id === aspectId);
    yield [`${variable.title} ${value}`, aspect?.safe[value] ?? null];
  }
}
