import { defineNode, needed } from '../definition/define-node.ts';
import { decimal, utc } from '../definition/value-type.ts';

export const row = defineNode({
  name: 'row',
  parents: ['attitude'],
  properties: {
    at: needed(utc, 'Instant of this row.'),
    w: needed(decimal(-1, 1), 'Scalar part of the quaternion.'),
    x: needed(decimal(-1, 1), 'Vector part along x.'),
    y: needed(decimal(-1, 1), 'Vector part along y.'),
    z: needed(decimal(-1, 1), 'Vector part along z.'),
  },
  about:
    'One row of an attitude table: the unit quaternion that carries vehicle axes into the frame. Between rows the vehicle turns evenly.',
  examples: {
    valid: ['row at="2031-09-14T11:00:00Z" w=1 x=0 y=0 z=0'],
    invalid: [{ text: 'row at="2031-09-14T11:00:00Z" w=1 x=0 y=0', code: 'campaign/missing-property' }],
  },
});
