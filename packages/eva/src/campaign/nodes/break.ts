import { defineNode, needed } from '../definition/define-node.ts';
import { decimal, quantity } from '../definition/value-type.ts';

export const breakNode = defineNode({
  name: 'break',
  parents: ['prebreathe'],
  title: true,
  properties: {
    pressure: needed(quantity('pressure', '10 kPa', '150 kPa'), 'Absolute.'),
    oxygen: needed(decimal(0.1, 1), 'Share of oxygen in what is breathed during it.'),
    minutes: needed(decimal(0, 10_080, 'min'), 'How long.'),
  },
  about: 'Time off oxygen inside a pre-breathe: it is owed by the break rule.',
  examples: {
    valid: ['break "mask off" pressure="101.3 kPa" oxygen=0.21 minutes=5'],
    invalid: [{ text: 'break pressure="101.3 kPa" minutes=5', code: 'campaign/missing-property' }],
  },
});
