import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const homeWithin = defineNode({
  name: 'home-within',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Nobody may be farther from the hatch than this in travel time.',
  examples: {
    valid: ['home-within "2 min"'],
    invalid: [
      { text: 'home-within "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'home-within', code: 'campaign/missing-argument' },
    ],
  },
});
