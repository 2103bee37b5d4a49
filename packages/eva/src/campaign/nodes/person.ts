import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, decimal, declaresId, integer, quantity, reference } from '../definition/value-type.ts';

export const person = defineNode({
  name: 'person',
  parents: ['document'],
  arguments: [argument('id', declaresId('person'), 'EV1, EV2, IV, …')],
  title: true,
  properties: {
    role: needed(
      choice('outside', 'inside', 'arm'),
      'outside: in a suit; inside: reads the steps; arm: operates an arm.',
    ),
    pace: optional(decimal(0.2, 5), "Multiplies travel and work; 1 is the crew's own planning figures."),
    'suit-limit': optional(quantity('time', '10 min', '24 h'), 'Longest time from PET 0 to vehicle supplies.'),
    anchor: optional(reference('hardware'), 'Where the safety tether starts from at egress.'),
    tether: optional(quantity('length', '0.5 m', '200 m'), 'Reel length.'),
    carries: optional(integer(0, 40), 'Hooks and hands for loose items.'),
    suit: optional(reference('suit'), 'The suit worn outside. Absent: nothing is claimed about supplies.'),
    'work-factor': optional(
      decimal(0.2, 5),
      "Multiplies the metabolic rates of the suit's classes of effort; needed with a suit.",
    ),
    'work-factor-low': optional(decimal(0.2, 5), 'The least that is still believed.'),
    'work-factor-high': optional(decimal(0.2, 5), 'The greatest that is still believed.'),
    'body-mass': optional(quantity('mass', '30 kg', '200 kg'), 'Needed with a suit: how much heat the body may store.'),
  },
  about: 'A crew member. Pace, suit limit, tether and hooks are their own figures; what is not stated stays unknown.',
  examples: {
    valid: [
      'person EV1 "First out" role=outside pace=1.0 suit-limit="7 h" tether="26 m" carries=6',
      'person EV1 role=outside suit=suit-one work-factor=1.0 work-factor-low=0.9 work-factor-high=1.2 body-mass="80 kg"',
    ],
    invalid: [
      { text: 'person EV1', code: 'campaign/missing-property' },
      { text: 'person EV1 role=outsid', code: 'campaign/not-a-choice' },
      { text: 'person EV1 role=outside suit-limit="34 kg"', code: 'campaign/wrong-dimension' },
      { text: 'person EV1 role=outside pace=-1', code: 'campaign/out-of-range' },
    ],
  },
});
