import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';
import { supplyLeft } from '../supply-left.ts';

export const batteryIsLeftAtTheHatch = defineRule({
  title: 'Battery above the reserve is left when the hatch is closed',
  broken: 'Somebody comes back with an empty battery',
  severity: 'error',
  why: 'The battery drives the fan that moves oxygen past the face and through the absorber, and the radio.',
  source: 'common practice',
  check: (facts) => supplyLeft(facts, 'battery'),
  examples: {
    violates: { campaign: inSuit(exampleSuit('worn', { 'battery-start': '"240 Wh"' })), timeline: SIX_HOURS_OUT },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
