import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, quantity, reference } from '../definition/value-type.ts';

export const antenna = defineNode({
  name: 'antenna',
  parents: ['document'],
  arguments: [argument('id', declaresId('antenna'), 'Short name.')],
  title: true,
  properties: {
    place: needed(reference('place'), 'Where it stands; the place has a position.'),
    joint: optional(reference('hardware'), 'The joint that carries it. Absent: fixed to the vehicle.'),
    clearance: optional(
      quantity('length', '0 m', '100 m'),
      'Surfaces nearer than this do not hide it: its own mast. Absent: 0.5 m.',
    ),
  },
  about: 'An antenna of the vehicle. With bodies and an attitude stated, the vehicle may hide a partner from it.',
  examples: {
    valid: ['antenna main "Main antenna" place=core-top clearance="1 m"'],
    invalid: [{ text: 'antenna main', code: 'campaign/missing-property' }],
  },
});
