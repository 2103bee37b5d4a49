import { defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const seenFrom = defineNode({
  name: 'seen-from',
  parents: ['place'],
  repeat: 'at-most-once',
  properties: {
    x: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle x axis.'),
    y: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle y axis.'),
    z: needed(quantity('length', '-1000 m', '1000 m'), 'Along the vehicle z axis.'),
  },
  about: 'Where one stands to look at a place, in the vehicle frame: the view that pictures of it are taken from.',
  examples: {
    valid: ['seen-from x="12 m" y="6 m" z="9 m"'],
    invalid: [{ text: 'seen-from x="12 m" y="6 m"', code: 'campaign/missing-property' }],
  },
});
