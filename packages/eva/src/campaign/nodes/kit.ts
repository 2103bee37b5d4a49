import { defineNode, restArgument } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const kit = defineNode({
  name: 'kit',
  parents: ['response'],
  arguments: [restArgument('items', reference('hardware'), 'Hardware ids.')],
  about: 'What the response needs to hand.',
  examples: {
    valid: ['kit driver pry-bar'],
    invalid: [{ text: 'kit', code: 'campaign/missing-argument' }],
  },
});
