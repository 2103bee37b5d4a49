import { argument, defineNode } from '../definition/define-node.ts';
import { text } from '../definition/value-type.ts';

export const caution = defineNode({
  name: 'caution',
  parents: ['stint'],
  arguments: [argument('text', text, 'What to look out for.')],
  about: 'Printed above the work on cards and spoken before it.',
  examples: {
    valid: ['caution "Hoses may hold pressure"'],
    invalid: [{ text: 'caution', code: 'campaign/missing-argument' }],
  },
});
