import { argument, defineNode, optional, restArgument } from '../definition/define-node.ts';
import { choice, variable, word } from '../definition/value-type.ts';

export const need = defineNode({
  name: 'need',
  parents: ['stint'],
  arguments: [
    argument('variable', variable, 'State that is needed.'),
    restArgument('values', word, 'Values that will do.'),
  ],
  properties: { when: optional(choice('start', 'during', 'end'), 'When it must hold. Absent: during.') },
  about: 'A need beyond what the verbs imply.',
  examples: {
    valid: ['need port-joint parked when=during'],
    invalid: [{ text: 'need port-joint parked when=always', code: 'campaign/not-a-choice' }],
  },
});
