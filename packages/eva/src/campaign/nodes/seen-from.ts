import { defineNode } from '../definition/define-node.ts';
import { pointProperties } from '../definition/point-properties.ts';

export const seenFrom = defineNode({
  name: 'seen-from',
  parents: ['place'],
  repeat: 'at-most-once',
  properties: pointProperties,
  about: 'Where one stands to look at a place, in the vehicle frame: the view that pictures of it are taken from.',
  examples: {
    valid: ['seen-from x="12 m" y="6 m" z="9 m"'],
    invalid: [{ text: 'seen-from x="12 m" y="6 m"', code: 'campaign/missing-property' }],
  },
});
