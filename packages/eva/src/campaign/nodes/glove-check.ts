import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const gloveCheck = defineNode({
  name: 'glove-check',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Gloves are looked at no less often than this.',
  examples: {
    valid: ['glove-check "2 min"'],
    invalid: [
      { text: 'glove-check "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'glove-check', code: 'campaign/missing-argument' },
    ],
  },
});
