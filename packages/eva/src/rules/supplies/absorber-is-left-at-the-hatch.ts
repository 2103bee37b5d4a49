import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';
import { supplyLeft } from '../supply-left.ts';

export const absorberIsLeftAtTheHatch = defineRule({
  title: 'Capacity of the CO2 absorber above its reserve is left when the hatch is closed',
  broken: 'Somebody comes back with a spent CO2 absorber',
  severity: 'error',
  why: 'A spent absorber lets CO2 rise within minutes: headache first, then worse judgement, when the hatch is still ahead.',
  source: '[LUSK24]',
  check: (facts) => supplyLeft(facts, 'carbon-dioxide'),
  examples: {
    violates: {
      campaign: inSuit(exampleSuit('worn', { 'carbon-dioxide-capacity': '"0.3 kg"' })),
      timeline: SIX_HOURS_OUT,
    },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
