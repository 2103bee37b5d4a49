import { defineNode, optional } from '../definition/define-node.ts';
import { reference, word } from '../definition/value-type.ts';

export const join = defineNode({
  name: 'join',
  parents: ['task', 'insert'],
  title: true,
  properties: {
    id: optional(word, 'Short name. Absent: made from the title.'),
    from: optional(reference('person', 'arm'), 'Who says it.'),
    to: optional(reference('person', 'arm'), 'Who waits for it.'),
    after: optional(reference('stint'), 'The stint whose end releases. Absent: the nearest above.'),
    before: optional(reference('stint'), 'The stint that waits. Absent: the nearest below.'),
  },
  about: 'Where two lanes meet: a word is said at the end of one stint, and another waits for it.',
  examples: {
    valid: ['join "pump free" from=EV1 to=crane'],
    invalid: [{ text: 'join "pump free" form=EV1', code: 'campaign/unknown-property' }],
  },
});
