import { argument, defineNode, optional } from '../definition/define-node.ts';
import { declaresId, reference } from '../definition/value-type.ts';

export const body = defineNode({
  name: 'body',
  parents: ['document'],
  arguments: [argument('id', declaresId('vehicle-body'), 'Short name.')],
  title: true,
  properties: {
    joint: optional(
      reference('hardware'),
      'The rotating joint that carries it. Absent: fixed. How the joint turns is said once, by turns, in one of its bodies.',
    ),
  },
  about: 'A part of the vehicle that casts shadow and hides beams, made of boxes and cylinders in vehicle axes.',
  examples: {
    valid: ['body core "Core module" { cylinder x="6 m" y="0 m" z="2 m" along=x radius="1.8 m" length="11 m" }'],
    invalid: [{ text: 'body', code: 'campaign/missing-argument' }],
  },
});
