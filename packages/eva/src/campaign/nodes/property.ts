import { argument, defineNode } from '../definition/define-node.ts';
import { scalar, word } from '../definition/value-type.ts';

export const property = defineNode({
  name: 'property',
  parents: ['hardware'],
  arguments: [
    argument('name', word, 'Property of the kind.'),
    argument('value', scalar, 'Its value, with a unit where the kind asks for one.'),
  ],
  about: 'A property that the kind knows, such as the range of a tool or the room in a bag.',
  examples: {
    valid: ['property torque-most "34 N·m"', 'property room 6'],
    invalid: [{ text: 'property room', code: 'campaign/missing-argument' }],
  },
});
