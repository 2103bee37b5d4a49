import { defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const box = defineNode({
  name: 'box',
  parents: ['body'],
  properties: {
    x: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    y: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    z: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    'along-x': needed(quantity('length', '1 mm', '1000 m'), 'Full length along x.'),
    'along-y': needed(quantity('length', '1 mm', '1000 m'), 'Full length along y.'),
    'along-z': needed(quantity('length', '1 mm', '1000 m'), 'Full length along z.'),
  },
  about: 'A box about its centre, its edges along the vehicle axes.',
  examples: {
    valid: ['box x="13 m" y="12 m" z="3 m" along-x="4 m" along-y="14 m" along-z="10 cm"'],
    invalid: [
      { text: 'box x="13 m" y="12 m" z="3 m" along-x="4 m" along-y="14 m"', code: 'campaign/missing-property' },
      {
        text: 'box x="13 m" y="12 m" z="3 m" along-x="4 m" along-y="14 m" along-z="0 m"',
        code: 'campaign/out-of-range',
      },
    ],
  },
});
