import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { marginIsNegative } from '../way-home-facts.ts';

const campaign = `
hardware lid kind=cable at=tip state=stowed { state retainer none }
task look rank=1 eva=day { stint see who=EV1 at=tip { lay lid; gather lid } }
`;
const timeline = (wall: string): string => `${OUT}EV1 0:10-0:18 porch > bay > tip
EV1 0:18-0:30 look/see
EV1 0:30-0:38 tip > bay > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53
wall ${wall} supplies`;

export const terminateFitsBeforeTheWall = defineRule({
  title: 'From every minute both can close what is open and be in before the wall',
  broken: 'From some minute there is no time to close up and come in',
  severity: 'error',
  why: 'A plan that cannot be stopped in time is only good if nothing goes wrong. Every pair of progress that can stand side by side counts, with closing times that hold nine times in ten.',
  source: 'common practice',
  check: (facts) => marginIsNegative(facts, 'terminate'),
  examples: {
    violates: { campaign, timeline: timeline('0:45') },
    satisfies: { campaign, timeline: timeline('6:00') },
  },
});
