import { defineNode, restArgument } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const tasks = defineNode({
  name: 'tasks',
  parents: ['objective', 'milestone'],
  repeat: 'at-most-once',
  arguments: [restArgument('tasks', reference('task'), 'Task ids.')],
  about: 'The tasks that together reach the objective or the milestone.',
  examples: {
    valid: ['tasks fit-mast route-mast-power'],
    invalid: [{ text: 'tasks', code: 'campaign/missing-argument' }],
  },
});
