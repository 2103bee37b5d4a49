import { defineNode } from '../definition/define-node.ts';
import { pointProperties } from '../definition/point-properties.ts';

export const pivot = defineNode({
  name: 'pivot',
  parents: ['turns'],
  repeat: 'once',
  properties: pointProperties,
  about: 'A point on the axis of the joint.',
  examples: {
    valid: ['pivot x="13 m" y="5 m" z="3 m"'],
    invalid: [{ text: 'pivot x="13 m" y="5 m"', code: 'campaign/missing-property' }],
  },
});
