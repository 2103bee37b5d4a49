import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, integer, reference } from '../definition/value-type.ts';

export const outside = defineNode({
  name: 'outside',
  parents: ['stint'],
  arguments: [argument('window', reference('window'), 'The window.')],
  properties: {
    part: optional(choice('whole', 'start', 'steps'), 'What part of the stint. Absent: whole.'),
    'from-step': optional(integer(1, 999), 'With part=steps: the first sentence, counted from 1.'),
    'to-step': optional(integer(1, 999), 'With part=steps: the last sentence.'),
  },
  about: 'It meets no interval of the window.',
  examples: {
    valid: ['outside night part=whole', 'outside night part=steps from-step=2 to-step=4'],
    invalid: [{ text: 'outside night part=middle', code: 'campaign/not-a-choice' }],
  },
});
