import { defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const position = defineNode({
  name: 'position',
  parents: ['place'],
  repeat: 'at-most-once',
  properties: {
    x: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle x axis.'),
    y: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle y axis.'),
    z: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle z axis.'),
  },
  about: 'Where a place is in the vehicle frame.',
  examples: {
    valid: ['position x="0 m" y="1.2 m" z="-30 cm"'],
    invalid: [{ text: 'position x="0 m" y="1.2 m"', code: 'campaign/missing-property' }],
  },
});
