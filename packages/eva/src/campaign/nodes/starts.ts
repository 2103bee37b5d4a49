import { argument, defineNode, restArgument } from '../definition/define-node.ts';
import { variable, word } from '../definition/value-type.ts';

export const starts = defineNode({
  name: 'starts',
  parents: ['clock'],
  repeat: 'once',
  arguments: [
    argument('variable', variable, 'State that is watched.'),
    restArgument('values', word, 'Values; taking one of them starts the clock.'),
  ],
  about: 'The change of state that starts the clock, whoever makes it.',
  examples: {
    valid: ['starts j20 demated'],
    invalid: [{ text: 'starts j20', code: 'campaign/missing-argument' }],
  },
});
