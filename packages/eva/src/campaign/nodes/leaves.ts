import { argument, defineNode } from '../definition/define-node.ts';
import { variable, word } from '../definition/value-type.ts';

export const leaves = defineNode({
  name: 'leaves',
  parents: ['event', 'response'],
  arguments: [
    argument('variable', variable, 'State that it changes.'),
    argument('value', word, 'The value it leaves.'),
  ],
  about: 'The state that an event or a response leaves behind.',
  examples: {
    valid: ['leaves port-a occupied'],
    invalid: [{ text: 'leaves port-a', code: 'campaign/missing-argument' }],
  },
});
