import { defineNode, needed } from '../definition/define-node.ts';
import { choice, quantity } from '../definition/value-type.ts';

export const cylinder = defineNode({
  name: 'cylinder',
  parents: ['body'],
  properties: {
    x: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    y: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    z: needed(quantity('length', '-1000 m', '1000 m'), 'Centre.'),
    along: needed(choice('x', 'y', 'z'), 'Axis.'),
    radius: needed(quantity('length', '1 mm', '500 m'), 'Radius.'),
    length: needed(quantity('length', '1 mm', '1000 m'), 'Length.'),
  },
  about: 'A closed cylinder about its centre, drawn with 32 sides, so that it is up to 0.5 % slimmer than stated.',
  examples: {
    valid: ['cylinder x="6 m" y="0 m" z="2 m" along=x radius="1.8 m" length="11 m"'],
    invalid: [
      { text: 'cylinder x="6 m" y="0 m" z="2 m" along=w radius="1.8 m" length="11 m"', code: 'campaign/not-a-choice' },
    ],
  },
});
