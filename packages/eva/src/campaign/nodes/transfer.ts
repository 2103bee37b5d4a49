import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { flag, quantity, reference } from '../definition/value-type.ts';

export const transfer = defineNode({
  name: 'transfer',
  parents: ['arm'],
  arguments: [
    argument('from', reference('pose'), 'Pose it leaves.'),
    argument('to', reference('pose'), 'Pose it reaches.'),
  ],
  properties: {
    empty: needed(quantity('time', '1 s', '6 h'), 'Time with nothing on the arm.'),
    loaded: optional(quantity('time', '1 s', '6 h'), 'Time with a rider or a load. Absent: not allowed loaded.'),
    'one-way': optional(flag, 'Only from the first pose to the second. Absent: both ways.'),
  },
  about: 'A motion of the arm between two poses.',
  examples: {
    valid: [
      'transfer crane-park crane-pump empty="3 min" loaded="5 min" one-way=#false',
      'transfer crane-carrier crane-pump empty="4 min" loaded="8 min" { climb-down spine-2 "12 min" }',
    ],
    invalid: [
      { text: 'transfer a b', code: 'campaign/missing-property' },
      { text: 'transfer a b empty=3', code: 'campaign/wrong-type' },
      { text: 'transfer a b empty="3 min" one-way="no"', code: 'campaign/wrong-type' },
    ],
  },
});
