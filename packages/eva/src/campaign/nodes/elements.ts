import { argument, defineNode } from '../definition/define-node.ts';
import { text } from '../definition/value-type.ts';

export const elements = defineNode({
  name: 'elements',
  parents: ['orbit'],
  repeat: 'at-most-once',
  arguments: [
    argument('first line', text, 'Line 1, 69 columns with its checksum.'),
    argument('second line', text, 'Line 2, 69 columns with its checksum.'),
  ],
  about: 'Two-line elements, moved by SGP4. Line numbers, lengths, checksums and every field are checked.',
  examples: {
    valid: [
      'elements "1 90001U 31001A   31256.50000000  .00010000  00000-0  20000-3 0  9993" "2 90001  44.0000 120.0000 0005000   0.0000   0.0000 15.50000000    09"',
    ],
    invalid: [{ text: 'elements "1 90001U"', code: 'campaign/missing-argument' }],
  },
});
