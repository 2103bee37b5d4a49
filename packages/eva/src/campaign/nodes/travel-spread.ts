import { defineNode, needed } from '../definition/define-node.ts';
import { decimal } from '../definition/value-type.ts';

export const travelSpread = defineNode({
  name: 'travel-spread',
  parents: ['limits'],
  repeat: 'at-most-once',
  properties: {
    least: needed(decimal(0.1, 1), 'At the quickest: this many times the planning figure.'),
    most: needed(decimal(1, 10), 'At the slowest.'),
  },
  about:
    'How far moves, climbs, arm transfers and hatch passages run short and long of their planning figures. Proofs hold over all of it; the way home counts the slowest.',
  examples: {
    valid: ['travel-spread least=0.9 most=1.3'],
    invalid: [
      { text: 'travel-spread least=0.9', code: 'campaign/missing-property' },
      { text: 'travel-spread least=1.3 most=1.4', code: 'campaign/out-of-range' },
    ],
  },
});
