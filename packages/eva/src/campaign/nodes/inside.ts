import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, integer, reference } from '../definition/value-type.ts';

export const inside = defineNode({
  name: 'inside',
  parents: ['stint'],
  arguments: [argument('window', reference('window'), 'The window.')],
  properties: {
    part: optional(choice('whole', 'start', 'steps'), 'What part of the stint. Absent: whole.'),
    'from-step': optional(integer(1, 999), 'With part=steps: the first sentence, counted from 1.'),
    'to-step': optional(integer(1, 999), 'With part=steps: the last sentence.'),
  },
  about: 'It lies within one interval of the window.',
  examples: {
    valid: ['inside night part=whole', 'inside night part=steps from-step=2 to-step=4'],
    invalid: [{ text: 'inside night part=middle', code: 'campaign/not-a-choice' }],
  },
});
