import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const restraintIngress = defineNode({
  name: 'restraint-ingress',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Time to get into a foot restraint.',
  examples: {
    valid: ['restraint-ingress "2 min"'],
    invalid: [
      { text: 'restraint-ingress "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'restraint-ingress', code: 'campaign/missing-argument' },
    ],
  },
});
