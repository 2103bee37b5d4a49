import { argument, defineNode, optional } from '../definition/define-node.ts';
import { declaresId, flag, reference, word } from '../definition/value-type.ts';

export const place = defineNode({
  name: 'place',
  parents: ['vehicle'],
  repeat: 'at-least-once',
  arguments: [argument('id', declaresId('place'), 'Short name.')],
  title: true,
  properties: {
    family: optional(word, 'Colour family on the home chart.'),
    light: optional(reference('window'), 'Windows in which it is lit.'),
    'keep-out': optional(flag, 'Nobody may go there. Absent: no.'),
  },
  about: 'A place where a person can be: a worksite, a crossing, the porch.',
  examples: {
    valid: [
      'place porch "Lock porch" family=core light=day { position x="0 m" y="1.2 m" z="0 m" }',
      'place wing-tip keep-out=#true',
    ],
    invalid: [{ text: 'place porch keepout=#true', code: 'campaign/unknown-property' }],
  },
});
