import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, variable, word } from '../definition/value-type.ts';

export const leave = defineNode({
  name: 'leave',
  parents: ['stint'],
  arguments: [argument('variable', variable, 'State that is left.'), argument('value', word, 'The value.')],
  properties: { at: optional(choice('start', 'end'), 'When it is written. Absent: end.') },
  about: 'A change beyond what the verbs imply.',
  examples: {
    valid: ['leave cover-7 open at=end'],
    invalid: [{ text: 'leave cover-7', code: 'campaign/missing-argument' }],
  },
});
