import { defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const links = defineNode({
  name: 'links',
  parents: ['document'],
  repeat: 'at-most-once',
  properties: {
    handover: needed(quantity('time', '0 s', '10 min'), 'Without signal from one link to the next.'),
    shortest: needed(quantity('time', '0 s', '2 h'), 'A link shorter than this is not taken up.'),
  },
  about:
    'How one radio link follows another. Without it no time is lost between links, and the source of the windows says so.',
  examples: {
    valid: ['links handover="30 s" shortest="3 min"'],
    invalid: [{ text: 'links handover="30 s"', code: 'campaign/missing-property' }],
  },
});
