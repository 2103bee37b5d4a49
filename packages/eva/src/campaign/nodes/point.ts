import { argument, defineNode, needed } from '../definition/define-node.ts';
import { quantity } from '../definition/value-type.ts';

export const point = defineNode({
  name: 'point',
  parents: ['inspired-curve'],
  arguments: [argument('power', quantity('power', '0 W', '1500 W'), 'Metabolic rate.')],
  properties: {
    mean: needed(quantity('pressure', '0 Pa', '10000 Pa'), 'Mean partial pressure breathed in.'),
    deviation: needed(quantity('pressure', '0 Pa', '10000 Pa'), 'Standard deviation between people.'),
  },
  about: 'One measured work rate, in rising order.',
  examples: {
    valid: ['point "293 W" mean="8.09 mmHg" deviation="1.39 mmHg"'],
    invalid: [{ text: 'point "293 W" mean="8.09 mmHg"', code: 'campaign/missing-property' }],
  },
});
