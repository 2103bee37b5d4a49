import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const restraintEgress = defineNode({
  name: 'restraint-egress',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Time to get out of a foot restraint.',
  examples: {
    valid: ['restraint-egress "2 min"'],
    invalid: [
      { text: 'restraint-egress "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'restraint-egress', code: 'campaign/missing-argument' },
    ],
  },
});
