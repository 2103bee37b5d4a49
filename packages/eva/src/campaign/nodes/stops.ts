import { argument, defineNode, restArgument } from '../definition/define-node.ts';
import { variable, word } from '../definition/value-type.ts';

export const stops = defineNode({
  name: 'stops',
  parents: ['clock'],
  repeat: 'once',
  arguments: [
    argument('variable', variable, 'State that is watched.'),
    restArgument('values', word, 'Values; taking one of them stops the clock.'),
  ],
  about: 'The change of state that stops the clock, whoever makes it.',
  examples: {
    valid: ['stops j20 demated'],
    invalid: [{ text: 'stops j20', code: 'campaign/missing-argument' }],
  },
});
