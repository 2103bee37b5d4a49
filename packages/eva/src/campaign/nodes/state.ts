import { argument, defineNode } from '../definition/define-node.ts';
import { word } from '../definition/value-type.ts';

export const state = defineNode({
  name: 'state',
  parents: ['hardware'],
  arguments: [argument('aspect', word, 'Aspect of the kind.'), argument('value', word, 'Its value at the start.')],
  about: 'The value of a further aspect at the start.',
  examples: {
    valid: ['state power on'],
    invalid: [{ text: 'state power', code: 'campaign/missing-argument' }],
  },
});
