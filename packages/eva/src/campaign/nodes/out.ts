import { argument, defineNode } from '../definition/define-node.ts';
import { quantity, reference } from '../definition/value-type.ts';

export const outNode = defineNode({
  name: 'out',
  parents: ['eva'],
  arguments: [
    argument('person', reference('person'), 'Who.'),
    argument('time', quantity('time', '0 s', '2 h'), 'How long the passage takes.'),
  ],
  about: 'Who leaves by the hatch, in the order of the text, and how long each passage takes.',
  examples: {
    valid: ['out EV1 "8 min"'],
    invalid: [{ text: 'out EV1', code: 'campaign/missing-argument' }],
  },
});
