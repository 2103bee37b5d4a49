import { defineNode } from '../definition/define-node.ts';
import { pointProperties } from '../definition/point-properties.ts';

export const position = defineNode({
  name: 'position',
  parents: ['place'],
  repeat: 'at-most-once',
  properties: pointProperties,
  about: 'Where a place is in the vehicle frame.',
  examples: {
    valid: ['position x="0 m" y="1.2 m" z="-30 cm"'],
    invalid: [{ text: 'position x="0 m" y="1.2 m"', code: 'campaign/missing-property' }],
  },
});
