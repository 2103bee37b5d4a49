import { argument, defineNode } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const probability = defineNode({
  name: 'probability',
  parents: ['response'],
  repeat: 'at-most-once',
  arguments: [argument('chance', quantity('ratio', '0 %', '100 %'), 'Chance that it is needed, once a use.')],
  about: 'How likely the trouble is, where somebody knows.',
  examples: {
    valid: ['probability "2 %"'],
    invalid: [{ text: 'probability "120 %"', code: 'campaign/out-of-range' }],
  },
});
