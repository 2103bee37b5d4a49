import { argument, defineNode } from '../definition/define-node.ts';
import { word } from '../definition/value-type.ts';

export const use = defineNode({
  name: 'use',
  parents: ['task', 'insert'],
  arguments: [
    argument('template', word, 'Name of the template.'),
    argument('id', word, 'Short name of this use; the stints it writes begin with it.'),
  ],
  title: true,
  about: 'Writes the stints of a task template. Its properties and inner nodes are those of the template.',
  examples: {
    valid: ['use move-restraint mv who=EV1 restraint=r1 from=socket-a to=socket-b'],
    invalid: [{ text: 'use move-restraint', code: 'campaign/missing-argument' }],
  },
});
