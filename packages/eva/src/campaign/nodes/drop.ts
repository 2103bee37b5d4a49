import { argument, defineNode } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const drop = defineNode({
  name: 'drop',
  parents: ['cut-order'],
  repeat: 'at-least-once',
  arguments: [argument('task', reference('task'), 'The task or insert.')],
  about: 'The next thing given up.',
  examples: {
    valid: ['drop photo-survey'],
    invalid: [{ text: 'drop', code: 'campaign/missing-argument' }],
  },
});
