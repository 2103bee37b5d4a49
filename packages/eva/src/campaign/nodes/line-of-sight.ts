import { defineNode, needed } from '../definition/define-node.ts';
import { decimal, quantity } from '../definition/value-type.ts';

export const lineOfSight = defineNode({
  name: 'line-of-sight',
  parents: ['place'],
  repeat: 'at-most-once',
  properties: {
    x: needed(decimal(-1, 1), 'Part along the vehicle x axis.'),
    y: needed(decimal(-1, 1), 'Part along the vehicle y axis.'),
    z: needed(decimal(-1, 1), 'Part along the vehicle z axis.'),
    within: needed(quantity('angle', '1 deg', '90 deg'), 'The Sun nearer to it than this is in the eyes.'),
  },
  about: 'Where somebody who works at this place looks, in vehicle axes.',
  examples: {
    valid: ['line-of-sight x=0 y=0 z=-1 within="20 deg"'],
    invalid: [{ text: 'line-of-sight x=0 y=0 z=-1', code: 'campaign/missing-property' }],
  },
});
