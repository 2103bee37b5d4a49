import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, quantity, reference, references } from '../definition/value-type.ts';

export const rail = defineNode({
  name: 'rail',
  parents: ['vehicle'],
  arguments: [argument('from', reference('place'), 'One end.'), argument('to', reference('place'), 'The other end.')],
  properties: {
    id: optional(declaresId('rail'), 'Needed only where two rails join the same places. Absent: from--to.'),
    minutes: needed(quantity('time', '1 s', '4 h'), 'Planning figure for an unladen person of pace 1.'),
    length: optional(quantity('length', '1 cm', '500 m'), 'For the tether.'),
    refuses: optional(references('load-class'), 'Classes of load that do not fit here.'),
    fairlead: optional(reference('place'), 'Place where the tether runs through a fairlead on this rail.'),
  },
  about: 'A hand-over-hand way between two places, both ways.',
  examples: {
    valid: ['rail porch spine-1 minutes="2 min" length="6 m" { open-while port-joint parked }'],
    invalid: [
      { text: 'rail porch minutes="2 min"', code: 'campaign/missing-argument' },
      { text: 'rail a b minutes=2', code: 'campaign/wrong-type' },
      { text: 'rail a b minutes="0 min"', code: 'campaign/out-of-range' },
    ],
  },
});
