import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { flag, quantity, referenceOrWord, text, word } from '../definition/value-type.ts';

const power = quantity('power', '0 W', '5000 W');

export const load = defineNode({
  name: 'load',
  parents: ['suit'],
  arguments: [argument('name', word, 'Name of the load.'), argument('power', power, 'Likely electrical power.')],
  properties: {
    low: optional(power, 'The least that is still believed.'),
    high: optional(power, 'The greatest that is still believed.'),
    exact: optional(flag, '#true in place of low and high.'),
    source: needed(text, 'Where it comes from.'),
    when: needed(
      referenceOrWord(['always'], false, 'window'),
      'always, or a window: on while it is open, such as lamps at night.',
    ),
  },
  about: 'An electrical load of the suit.',
  examples: {
    valid: ['load fan "35 W" low="32 W" high="40 W" when=always source="invented"'],
    invalid: [
      { text: 'load fan "35 W" low="32 W" high="40 W" source="invented"', code: 'campaign/missing-property' },
      { text: 'load fan 35 low="32 W" high="40 W" when=always source="invented"', code: 'campaign/wrong-type' },
    ],
  },
});
