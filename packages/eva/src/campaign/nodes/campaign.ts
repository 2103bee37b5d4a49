import { argument, defineNode } from '../definition/define-node.ts';
import { word } from '../definition/value-type.ts';

export const campaign = defineNode({
  name: 'campaign',
  parents: ['document'],
  repeat: 'at-most-once',
  arguments: [argument('id', word, 'Short name of the campaign.')],
  title: true,
  about: 'Names the campaign: all EVAs that serve one set of objectives. It stands once among all files.',
  examples: {
    valid: ['campaign fulmar "Mast, pump and harvest"'],
    invalid: [{ text: 'campaign', code: 'campaign/missing-argument' }],
  },
});
