import { argument, defineNode } from '../definition/define-node.ts';
import { quantity, reference } from '../definition/value-type.ts';

export const climbDown = defineNode({
  name: 'climb-down',
  parents: ['pose', 'transfer'],
  repeat: 'at-most-once',
  arguments: [
    argument('place', reference('place'), 'Where the rider arrives on structure.'),
    argument('time', quantity('time', '1 s', '4 h'), 'How long it takes.'),
  ],
  about:
    'The way off the plate if the arm is dead: at this pose, or from anywhere between the two poses of this transfer, at the longest. Where it is missing the rider is committed.',
  examples: {
    valid: ['climb-down spine-2 "4 min"'],
    invalid: [
      { text: 'climb-down spine-2', code: 'campaign/missing-argument' },
      { text: 'climb-down spine-2 "4 m"', code: 'campaign/wrong-dimension' },
    ],
  },
});
