import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';
import { supplyLeft } from '../supply-left.ts';

export const oxygenIsLeftAtTheHatch = defineRule({
  title: 'Oxygen above the reserve is left when the hatch is closed',
  broken: 'Somebody comes back with too little oxygen',
  severity: 'error',
  why: 'The reserve is for the way home in trouble. Every gram planned into it is a gram less when it is needed.',
  source: '[LUSK24] [SW85]',
  check: (facts) => supplyLeft(facts, 'oxygen'),
  examples: {
    violates: {
      campaign: inSuit(exampleSuit('worn', { 'oxygen-start-pressure': '"3 MPa"' })),
      timeline: SIX_HOURS_OUT,
    },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
