import { defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const pivot = defineNode({
  name: 'pivot',
  parents: ['turns'],
  repeat: 'once',
  properties: {
    x: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle x axis.'),
    y: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle y axis.'),
    z: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle z axis.'),
  },
  about: 'A point on the axis of the joint.',
  examples: {
    valid: ['pivot x="13 m" y="5 m" z="3 m"'],
    invalid: [{ text: 'pivot x="13 m" y="5 m"', code: 'campaign/missing-property' }],
  },
});
