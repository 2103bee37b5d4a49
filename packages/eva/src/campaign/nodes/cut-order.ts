import { argument, defineNode } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const cutOrder = defineNode({
  name: 'cut-order',
  parents: ['document'],
  arguments: [argument('eva', reference('eva'), 'The EVA.')],
  about: 'What is dropped when late, first dropped first, agreed before the day.',
  examples: {
    valid: ['cut-order pump { drop photo-survey; drop tray-4 }'],
    invalid: [{ text: 'cut-order pump', code: 'campaign/missing-node' }],
  },
});
