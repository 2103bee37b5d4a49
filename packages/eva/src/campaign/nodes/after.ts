import { argument, defineNode, optional } from '../definition/define-node.ts';
import { quantity, reference } from '../definition/value-type.ts';

export const after = defineNode({
  name: 'after',
  parents: ['stint'],
  arguments: [argument('stint', reference('stint'), 'The stint that comes first.')],
  properties: {
    least: optional(quantity('time', '0 s', '24 h'), 'At least this long after its end. Absent: 0.'),
    most: optional(quantity('time', '0 s', '24 h'), 'At most this long after its end.'),
  },
  about: 'Order between two stints, wherever both are planned.',
  examples: {
    valid: ['after other-stint least="5 min" most="30 min"'],
    invalid: [{ text: 'after other-stint least="soon"', code: 'campaign/not-a-quantity' }],
  },
});
