import { argument, defineNode } from '../definition/define-node.ts';
import { utc } from '../definition/value-type.ts';

export const interval = defineNode({
  name: 'interval',
  parents: ['window'],
  arguments: [argument('from', utc, 'First instant.'), argument('to', utc, 'First instant after it.')],
  about: 'One interval of a window, half-open.',
  examples: {
    valid: ['interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z"'],
    invalid: [{ text: 'interval "2031-09-14T11:00:00Z"', code: 'campaign/missing-argument' }],
  },
});
