import { defineNode, needed } from '../definition/define-node.ts';
import { flag } from '../definition/value-type.ts';

export const secondaryOxygen = defineNode({
  name: 'secondary-oxygen',
  parents: ['suit'],
  repeat: 'once',
  properties: {
    fitted: needed(flag, '#true: the five constants that begin with "secondary" are stated; #false: it has none.'),
  },
  about: 'Whether the suit has a second oxygen pack for coming home in trouble.',
  examples: {
    valid: ['secondary-oxygen fitted=#false'],
    invalid: [{ text: 'secondary-oxygen', code: 'campaign/missing-property' }],
  },
});
