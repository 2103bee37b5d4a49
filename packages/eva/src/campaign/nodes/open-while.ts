import { argument, defineNode, restArgument } from '../definition/define-node.ts';
import { variable, word } from '../definition/value-type.ts';

export const openWhile = defineNode({
  name: 'open-while',
  parents: ['rail'],
  arguments: [
    argument('variable', variable, 'State that decides.'),
    restArgument('values', word, 'Values under which the rail may be used.'),
  ],
  about: 'The rail is passable only while this holds; several of them must all hold.',
  examples: {
    valid: ['open-while port-joint parked'],
    invalid: [{ text: 'open-while port-joint', code: 'campaign/missing-argument' }],
  },
});
