import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, integer, reference } from '../definition/value-type.ts';

export const prefer = defineNode({
  name: 'prefer',
  parents: ['stint'],
  arguments: [argument('window', reference('window'), 'The window.')],
  properties: {
    part: optional(choice('whole', 'start', 'steps'), 'What part of the stint. Absent: whole.'),
    'from-step': optional(integer(1, 999), 'With part=steps: the first sentence, counted from 1.'),
    'to-step': optional(integer(1, 999), 'With part=steps: the last sentence.'),
  },
  about: 'A wish that it lies within the window: costs nothing but a note.',
  examples: {
    valid: ['prefer night part=whole', 'prefer night part=steps from-step=2 to-step=4'],
    invalid: [{ text: 'prefer night part=middle', code: 'campaign/not-a-choice' }],
  },
});
