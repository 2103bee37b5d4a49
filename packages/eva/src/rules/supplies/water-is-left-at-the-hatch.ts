import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';
import { supplyLeft } from '../supply-left.ts';

export const waterIsLeftAtTheHatch = defineRule({
  title: 'Feed water above the reserve is left when the hatch is closed',
  broken: 'Somebody comes back without water for cooling',
  severity: 'error',
  why: 'Without feed water nothing carries the heat away, and the body stores what it makes until work must stop.',
  source: '[RY89]',
  check: (facts) => supplyLeft(facts, 'water'),
  examples: {
    violates: { campaign: inSuit(exampleSuit('worn', { 'water-start': '"2 kg"' })), timeline: SIX_HOURS_OUT },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
