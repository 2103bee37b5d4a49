import { argument, defineNode } from '../definition/define-node.ts';
import { integer } from '../definition/value-type.ts';

export const handrail = defineNode({
  name: 'handrail',
  parents: ['document'],
  repeat: 'at-most-once',
  arguments: [argument('version', integer(0, 1_000_000), 'The version of the format that the file is written in.')],
  about: 'First node of every file: the version of the format. A reader that is older than the file says so and stops.',
  examples: {
    valid: ['handrail 1'],
    invalid: [
      { text: 'handrail "one"', code: 'campaign/wrong-type' },
      { text: 'handrail', code: 'campaign/missing-argument' },
    ],
  },
});
