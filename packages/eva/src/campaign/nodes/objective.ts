import { argument, defineNode, optional } from '../definition/define-node.ts';
import { declaresId, integer, reference } from '../definition/value-type.ts';

export const objective = defineNode({
  name: 'objective',
  parents: ['document'],
  arguments: [argument('id', declaresId('objective'), 'Short name.')],
  title: true,
  properties: {
    rank: optional(integer(1, 9999), '1 is the most important; unique. Absent: the order of the text.'),
    'needed-by': optional(reference('event'), 'An outside event that waits for it.'),
  },
  about: 'What somebody wants done, its place in the rank list and its milestones.',
  examples: {
    valid: [
      'objective antenna "Antenna mast working" rank=1 needed-by=cargo-berthing { tasks fit-mast route-mast-power }',
    ],
    invalid: [{ text: 'objective antenna rank=0', code: 'campaign/out-of-range' }],
  },
});
