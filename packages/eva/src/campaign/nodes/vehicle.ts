import { argument, defineNode, needed } from '../definition/define-node.ts';
import { reference, word } from '../definition/value-type.ts';

export const vehicle = defineNode({
  name: 'vehicle',
  parents: ['document'],
  repeat: 'at-most-once',
  arguments: [argument('id', word, 'Short name.')],
  title: true,
  properties: { hatch: needed(reference('place'), 'Place outside the hatch, where passages start and end.') },
  about: 'The vehicle as a crew member meets it: places, rails between them, classes of load.',
  examples: {
    valid: ['vehicle fulmar-station "Fulmar Station" hatch=porch { place porch }'],
    invalid: [{ text: 'vehicle fulmar-station { place porch }', code: 'campaign/missing-property' }],
  },
});
