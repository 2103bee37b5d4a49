import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { flag, quantity, text, word } from '../definition/value-type.ts';

const power = quantity('power', '0 W', '1200 W');

export const effort = defineNode({
  name: 'effort',
  parents: ['suit'],
  repeat: 'at-least-once',
  arguments: [
    argument('name', word, 'Name of the class of effort.'),
    argument('power', power, 'Likely metabolic rate.'),
  ],
  properties: {
    low: optional(power, 'The least that is still believed.'),
    high: optional(power, 'The greatest that is still believed.'),
    exact: optional(flag, '#true in place of low and high.'),
    source: needed(text, 'Where it comes from.'),
  },
  about: 'A class of effort and the metabolic rate of a person at it, before their own work factor.',
  examples: {
    valid: ['effort moderate "290 W" low="230 W" high="360 W" source="invented"'],
    invalid: [
      { text: 'effort moderate "290 N" low="230 W" high="360 W" source="invented"', code: 'campaign/wrong-dimension' },
      { text: 'effort moderate "290 W" low="230 W" high="360 W"', code: 'campaign/missing-property' },
    ],
  },
});
