import { argument, defineNode, optional } from '../definition/define-node.ts';
import { declaresId, reference } from '../definition/value-type.ts';

export const pose = defineNode({
  name: 'pose',
  parents: ['arm'],
  repeat: 'at-least-once',
  arguments: [argument('id', declaresId('pose'), 'Short name, unique among all poses.')],
  title: true,
  properties: { place: optional(reference('place'), 'Where a rider can get on or off, or where the tip works.') },
  about: 'A pose of the arm. Without a place it is a free pose, such as parked.',
  examples: {
    valid: ['pose crane-park "Parked"', 'pose crane-pump place=pump-bay { climb-down spine-2 "4 min" }'],
    invalid: [{ text: 'pose', code: 'campaign/missing-argument' }],
  },
});
