import { argument, defineNode } from '../definition/define-node.ts';
import { flag } from '../definition/value-type.ts';

export const safeStop = defineNode({
  name: 'safe-stop',
  parents: ['stint', 'with'],
  arguments: [argument('is', flag, '#true: always a safe stop; #false: never.')],
  about: 'After the sentence above it: a safe stop even if the kinds cannot tell, or never one.',
  examples: {
    valid: ['safe-stop #false'],
    invalid: [{ text: 'safe-stop no', code: 'campaign/wrong-type' }],
  },
});
