import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, declaresId, integer, quantity, reference, word } from '../definition/value-type.ts';

export const request = defineNode({
  name: 'request',
  parents: ['document'],
  arguments: [argument('id', declaresId('request'), 'Short name.')],
  title: true,
  properties: {
    owner: needed(word, 'Who grants it: power, thermal, radio, attitude, …'),
    inhibits: needed(integer(0, 9), 'How many independent inhibits it sets.'),
    lead: needed(quantity('time', '0 s', '48 h'), 'Time to set it, from asking.'),
    verify: needed(quantity('time', '0 s', '12 h'), 'Time to verify it.'),
    clear: needed(quantity('time', '0 s', '12 h'), 'Time to clear it.'),
    longest: optional(quantity('time', '1 s', '96 h'), 'Longest it may be held.'),
    status: optional(choice('draft', 'asked', 'agreed', 'refused'), 'How far it is. Absent: draft.'),
    window: optional(reference('window'), 'Windows in which it can be in force. Absent: any time.'),
  },
  about: 'Something asked of the vehicle: item, inhibits, owner, times, status.',
  examples: {
    valid: [
      'request pump-bus-off "Coolant pump bus off" owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" longest="2 h" status=agreed',
    ],
    invalid: [
      { text: 'request off owner=power inhibits=2 verify="2 min" clear="5 min"', code: 'campaign/missing-property' },
      {
        text: 'request off owner=power inhibits=2.5 lead="1 min" verify="2 min" clear="5 min"',
        code: 'campaign/not-whole',
      },
    ],
  },
});
