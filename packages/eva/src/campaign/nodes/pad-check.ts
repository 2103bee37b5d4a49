import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const padCheck = defineNode({
  name: 'pad-check',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Absorption pads in the helmet are looked at no less often than this.',
  examples: {
    valid: ['pad-check "2 min"'],
    invalid: [
      { text: 'pad-check "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'pad-check', code: 'campaign/missing-argument' },
    ],
  },
});
