import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { decimal, declaresId, flag } from '../definition/value-type.ts';

export const loadClass = defineNode({
  name: 'load-class',
  parents: ['vehicle'],
  arguments: [argument('id', declaresId('load-class'), 'Short name.')],
  title: true,
  properties: {
    factor: needed(decimal(1, 20), 'Multiplies travel time.'),
    'fills-hands': optional(flag, 'Both hands: nothing else may be carried. Absent: no.'),
  },
  about: 'How carrying a large item slows a person down.',
  examples: {
    valid: ['load-class large "Large box" factor=1.6 fills-hands=#true'],
    invalid: [{ text: 'load-class large factor=0', code: 'campaign/out-of-range' }],
  },
});
