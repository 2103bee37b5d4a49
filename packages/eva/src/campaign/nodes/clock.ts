import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, declaresId, quantity } from '../definition/value-type.ts';

export const clock = defineNode({
  name: 'clock',
  parents: ['document'],
  arguments: [argument('id', declaresId('clock'), 'Short name.')],
  title: true,
  properties: {
    limit: needed(quantity('time', '1 s', '400 d'), 'The limit.'),
    kind: optional(choice('difference', 'budget'), 'Between two changes, or a budget that drains. Absent: difference.'),
    sense: optional(choice('most', 'least'), 'At most or at least the limit. Absent: most.'),
    'on-stop': optional(choice('reset', 'accumulate'), 'What a stop does. Absent: reset.'),
  },
  about: 'A limit between two changes of state: a unit may stay without power for 45 min.',
  examples: {
    valid: [
      'clock spare-cold "Spare without heater power" limit="45 min" sense=most on-stop=reset { starts j20 demated; stops j12 mated }',
    ],
    invalid: [
      { text: 'clock cold limit="45 min" { starts j20 demated }', code: 'campaign/missing-node' },
      { text: 'clock cold { starts j20 demated; stops j12 mated }', code: 'campaign/missing-property' },
    ],
  },
});
