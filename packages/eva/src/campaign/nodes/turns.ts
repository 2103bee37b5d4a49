import { defineNode, optional } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const turns = defineNode({
  name: 'turns',
  parents: ['body'],
  repeat: 'at-most-once',
  properties: {
    parked: optional(
      quantity('angle', '-360 deg', '360 deg'),
      'Angle it stands at while its joint is not turning. Absent: drawn as if it still followed the Sun, and the source says so.',
    ),
  },
  about:
    'How the joint of this body follows the Sun: about which axis, through which point, and which side looks at the Sun.',
  examples: {
    valid: ['turns parked="0 deg" { pivot x="13 m" y="5 m" z="3 m"; axis x=0 y=1 z=0; facing x=0 y=0 z=1 }'],
    invalid: [{ text: 'turns { axis x=0 y=1 z=0; facing x=0 y=0 z=1 }', code: 'campaign/missing-node' }],
  },
});
