import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, declaresId, integer, reference, referenceOrWord } from '../definition/value-type.ts';

export const insert = defineNode({
  name: 'insert',
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
  about: 'A get-ahead task, complete in itself, worth taking only if there is room.',
  examples: {
    valid: ['insert photo-survey rank=14 { stint look who=EV2 at=spine-1 }'],
    invalid: [{ text: 'insert photo-survey rank=1.5', code: 'campaign/not-whole' }],
  },
});
