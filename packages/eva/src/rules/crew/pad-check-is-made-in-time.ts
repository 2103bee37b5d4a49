import { defineRule } from '../define-rule.ts';
import { repeatedCheck, repeatedCheckExample } from '../repeated-check.ts';

export const padCheckIsMadeInTime = defineRule({
  title: 'The helmet pad is felt for water at the stated interval',
  broken: 'The helmet pad is not felt for too long',
  severity: 'warning',
  why: 'Water that collects behind the head is felt at the pad long before it reaches the face.',
  source: 'common practice',
  check: (facts) => repeatedCheck(facts, { verb: 'pad-check', limit: 'padCheckEveryS' }),
  examples: {
    violates: repeatedCheckExample('pad-check', '45 min'),
    satisfies: repeatedCheckExample('pad-check', '1 h'),
  },
});
