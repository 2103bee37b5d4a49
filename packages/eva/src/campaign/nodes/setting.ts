import { argument, defineNode } from '../definition/define-node.ts';
import { text, word } from '../definition/value-type.ts';

export const setting = defineNode({
  name: 'setting',
  parents: ['hardware'],
  arguments: [
    argument('name', word, 'Name of the setting.'),
    argument('value', text, 'As it is read aloud: "30 deg".'),
  ],
  about: 'A setting of a restraint or a tool, as the crew dials it.',
  examples: {
    valid: ['setting roll "30 deg"'],
    invalid: [{ text: 'setting roll', code: 'campaign/missing-argument' }],
  },
});
