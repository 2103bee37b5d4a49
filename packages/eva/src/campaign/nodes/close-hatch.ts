import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const closeHatch = defineNode({
  name: 'close-hatch',
  parents: ['eva'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '0 s', '2 h'), 'After the last person is in.')],
  about: 'From the last person in to the hatch closed and both on vehicle supplies.',
  examples: {
    valid: ['close-hatch "7 min"'],
    invalid: [{ text: 'close-hatch 7', code: 'campaign/wrong-type' }],
  },
});
