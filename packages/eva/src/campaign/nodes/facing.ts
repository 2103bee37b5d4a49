import { defineNode, needed } from '../definition/define-node.ts';
import { decimal } from '../definition/value-type.ts';

export const facing = defineNode({
  name: 'facing',
  parents: ['turns', 'place'],
  repeat: 'at-most-once',
  properties: {
    x: needed(decimal(-1, 1), 'Part along the vehicle x axis.'),
    y: needed(decimal(-1, 1), 'Part along the vehicle y axis.'),
    z: needed(decimal(-1, 1), 'Part along the vehicle z axis.'),
  },
  about:
    'Where a surface looks, outward, in vehicle axes. At a place: the surface worked on; without it light from any side counts.',
  examples: {
    valid: ['facing x=0 y=0 z=1'],
    invalid: [{ text: 'facing x=0 y=0', code: 'campaign/missing-property' }],
  },
});
