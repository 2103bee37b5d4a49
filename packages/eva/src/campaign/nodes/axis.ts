import { defineNode, needed } from '../definition/define-node.ts';
import { decimal } from '../definition/value-type.ts';

export const axis = defineNode({
  name: 'axis',
  parents: ['turns'],
  repeat: 'once',
  properties: {
    x: needed(decimal(-1, 1), 'Part along the vehicle x axis.'),
    y: needed(decimal(-1, 1), 'Part along the vehicle y axis.'),
    z: needed(decimal(-1, 1), 'Part along the vehicle z axis.'),
  },
  about: 'Direction of the axis of the joint; angles are right-handed about it.',
  examples: {
    valid: ['axis x=0 y=1 z=0'],
    invalid: [{ text: 'axis x=0 y=12 z=0', code: 'campaign/out-of-range' }],
  },
});
