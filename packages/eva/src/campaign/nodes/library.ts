import { argument, defineNode, needed } from '../definition/define-node.ts';
import { text, word } from '../definition/value-type.ts';

export const library = defineNode({
  name: 'library',
  parents: ['document'],
  repeat: 'at-most-once',
  arguments: [argument('name', word, 'The kinds library.')],
  properties: { version: needed(text, 'Its version, pinned: times and verbs change only when this line does.') },
  about: 'The library of kinds (states, verbs, times) that the campaign is written against.',
  examples: {
    valid: ['library standard version="1"'],
    invalid: [{ text: 'library standard', code: 'campaign/missing-property' }],
  },
});
