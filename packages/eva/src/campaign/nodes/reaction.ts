import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const reaction = defineNode({
  name: 'reaction',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '30 min'), 'The figure.')],
  about: 'Time from a call to the start of what it asks.',
  examples: {
    valid: ['reaction "30 s"'],
    invalid: [
      { text: 'reaction "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'reaction', code: 'campaign/missing-argument' },
    ],
  },
});
