import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const tetherSwap = defineNode({
  name: 'tether-swap',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Time to change the safety tether from one anchor to another.',
  examples: {
    valid: ['tether-swap "2 min"'],
    invalid: [
      { text: 'tether-swap "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'tether-swap', code: 'campaign/missing-argument' },
    ],
  },
});
