import { defineNode, needed } from '../definition/define-node.ts';
import { decimal, quantity, text } from '../definition/value-type.ts';

export const breakRule = defineNode({
  name: 'break-rule',
  parents: ['prebreathe'],
  repeat: 'at-most-once',
  properties: {
    payback: needed(decimal(0, 100), 'Minutes of oxygen owed for each minute of a break.'),
    longest: needed(quantity('time', '0 s', '24 h'), 'A longer break restarts the pre-breathe.'),
    source: needed(text, 'Where the rule comes from.'),
  },
  about: 'How a break is made good; needed where there is one.',
  examples: {
    valid: ['break-rule payback=2 longest="10 min" source="[B24] 3.2"'],
    invalid: [{ text: 'break-rule payback=2 longest="10 min"', code: 'campaign/missing-property' }],
  },
});
