import { defineRule } from '../define-rule.ts';
import { repeatedCheck, repeatedCheckExample } from '../repeated-check.ts';

export const gloveCheckIsMadeInTime = defineRule({
  title: 'Gloves are looked at at the stated interval',
  broken: 'Gloves are not looked at for too long',
  severity: 'warning',
  why: 'A cut in the outer layers is found by looking, before it reaches the bladder; one that is found ends the EVA of that person.',
  source: 'common practice',
  check: (facts) => repeatedCheck(facts, { verb: 'glove-check', limit: 'gloveCheckEveryS' }),
  examples: {
    violates: repeatedCheckExample('glove-check', '45 min'),
    satisfies: repeatedCheckExample('glove-check', '1 h'),
  },
});
