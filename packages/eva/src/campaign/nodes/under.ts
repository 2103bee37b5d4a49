import { defineNode, restArgument } from '../definition/define-node.ts';
import { reference } from '../definition/value-type.ts';

export const under = defineNode({
  name: 'under',
  parents: ['stint'],
  arguments: [restArgument('requests', reference('request'), 'Request ids.')],
  about: 'Requests that must be set and verified throughout, beside those that the hardware demands.',
  examples: {
    valid: ['under pump-bus-off'],
    invalid: [{ text: 'under', code: 'campaign/missing-argument' }],
  },
});
