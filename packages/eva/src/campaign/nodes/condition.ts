import { argument, defineNode } from '../definition/define-node.ts';
import { text } from '../definition/value-type.ts';

export const condition = defineNode({
  name: 'condition',
  parents: ['gate'],
  repeat: 'at-least-once',
  arguments: [argument('text', text, 'What must hold for "go".')],
  about: 'One condition of a gate, as it is polled.',
  examples: {
    valid: ['condition "Bus off verified"'],
    invalid: [{ text: 'condition', code: 'campaign/missing-argument' }],
  },
});
