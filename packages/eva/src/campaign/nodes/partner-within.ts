import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const partnerWithin = defineNode({
  name: 'partner-within',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'The two people outside stay within this travel time of each other.',
  examples: {
    valid: ['partner-within "2 min"'],
    invalid: [
      { text: 'partner-within "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'partner-within', code: 'campaign/missing-argument' },
    ],
  },
});
