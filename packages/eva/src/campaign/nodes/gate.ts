import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, petTime, reference, references, text } from '../definition/value-type.ts';

export const gate = defineNode({
  name: 'gate',
  parents: ['document'],
  arguments: [argument('id', declaresId('gate'), 'Short name.')],
  title: true,
  properties: {
    before: needed(reference('stint'), 'The stint that it opens.'),
    caller: needed(reference('person'), 'Who calls it.'),
    latest: optional(petTime, 'Latest PET for "go".'),
    'on-no': needed(text, 'What happens on "no".'),
    drops: optional(
      references('task', 'stint'),
      'Tasks and stints given up on "no", beside the stint that it opens and what rests on it. Absent: only those.',
    ),
  },
  about: 'A go/no-go: conditions, who calls it, the latest time, what happens on no.',
  examples: {
    valid: [
      'gate open-pump-bay "Open the pump bay" before="swap-pump/free-old-pump" caller=IV latest="3:10" on-no="go to trays" drops="swap-pump" { condition "Bus off verified" }',
    ],
    invalid: [
      { text: 'gate g before="a/b" caller=IV { condition "x" }', code: 'campaign/missing-property' },
      { text: 'gate g before="a/b" caller=IV on-no="x"', code: 'campaign/missing-node' },
    ],
  },
});
