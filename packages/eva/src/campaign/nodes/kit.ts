import { defineNode, restArgument } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const kit = defineNode({
  name: 'kit',
  parents: ['response'],
  arguments: [
    restArgument('items', reference('hardware', 'kind'), 'Hardware ids; or kinds, of which any piece will do.'),
  ],
  about: 'What the response needs to hand.',
  examples: {
    valid: ['kit driver pry-bar', 'kit ratchet'],
    invalid: [{ text: 'kit', code: 'campaign/missing-argument' }],
  },
});
