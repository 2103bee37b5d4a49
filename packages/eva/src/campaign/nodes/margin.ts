import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const margin = defineNode({
  name: 'margin',
  parents: ['limits'],
  repeat: 'at-most-once',
  arguments: [argument('time', quantity('time', '1 s', '12 h'), 'The figure.')],
  about: 'Margin wanted between both people in and the wall.',
  examples: {
    valid: ['margin "2 min"'],
    invalid: [
      { text: 'margin "2 m"', code: 'campaign/wrong-dimension' },
      { text: 'margin', code: 'campaign/missing-argument' },
    ],
  },
});
