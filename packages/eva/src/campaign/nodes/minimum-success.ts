import { defineNode, restArgument } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const minimumSuccess = defineNode({
  name: 'minimum-success',
  parents: ['eva'],
  repeat: 'at-most-once',
  arguments: [restArgument('tasks', reference('task'), 'Task ids.')],
  about: 'The tasks that make this EVA worth having flown.',
  examples: {
    valid: ['minimum-success fit-mast route-mast-power'],
    invalid: [{ text: 'minimum-success', code: 'campaign/missing-argument' }],
  },
});
