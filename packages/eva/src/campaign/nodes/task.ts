import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, declaresId, integer, reference, referenceOrWord } from '../definition/value-type.ts';

export const task = defineNode({
  name: 'task',
  parents: ['document'],
  arguments: [argument('id', declaresId('task'), 'Short name.')],
  title: true,
  properties: {
    rank: optional(
      integer(1, 9999),
      '1 is the most important; unique among tasks and inserts. Absent: after those above it.',
    ),
    eva: optional(referenceOrWord(['any'], true, 'eva'), 'EVAs it may fall in. Absent: the only one, or any.'),
    objective: optional(reference('objective'), 'The objective it serves.'),
    order: optional(
      choice('written', 'free'),
      'written: stints of one person keep the order of the text. Absent: written.',
    ),
  },
  about: 'A self-contained package of work: stints, joins and templates, in order. It moves between EVAs whole.',
  examples: {
    valid: [
      'task swap-pump rank=2 "Swap the coolant pump" eva=pump objective=cooling order=written { stint free-old-pump who=EV1 at=pump-bay }',
    ],
    invalid: [
      { text: 'task swap-pump order=any', code: 'campaign/not-a-choice' },
      { text: 'task swap-pump rank="first"', code: 'campaign/wrong-type' },
    ],
  },
});
