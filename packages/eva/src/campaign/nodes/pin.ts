import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, flag, petTime, reference } from '../definition/value-type.ts';

export const pin = defineNode({
  name: 'pin',
  parents: ['document'],
  arguments: [argument('of', reference('stint', 'task'), 'A stint (task/stint) or a task.')],
  properties: {
    person: optional(reference('person'), 'This person does it.'),
    role: optional(choice('lead', 'partner'), 'In this role. Absent: lead.'),
    start: optional(petTime, 'It starts at this PET.'),
    before: optional(reference('stint'), 'It comes before this stint.'),
    eva: optional(reference('eva'), 'The task falls in this EVA.'),
    out: optional(flag, 'The task is left out.'),
  },
  about: 'Something fixed by hand. One thing a line: a person, a start, an order, an EVA, or left out.',
  examples: {
    valid: ['pin "swap-pump/free-old-pump" person=EV1', 'pin "a/b" start="1:10"', 'pin some-task out=#true'],
    invalid: [{ text: 'pin "a/b" start="1 h"', code: 'campaign/not-a-pet' }],
  },
});
