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

export const assistFitsBeforeTheWall = defineRule({
  title: 'From every minute one can bring the other in before the wall',
  broken: 'From some minute there is no time for one to bring the other in',
  severity: 'error',
  why: 'If one cannot move, the partner reaches them, tows them, and has one pair of hands at the hatch. That takes far longer than going alone.',
  source: 'common practice',
  check: (facts) => marginIsNegative(facts, 'assist'),
  examples: {
    violates: { campaign, timeline: timeline('0:45') },
    satisfies: { campaign, timeline: timeline('6:00') },
  },
});
