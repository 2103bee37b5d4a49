import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { CONSTANT_WORDS } from '../definition/suit-constant-words.ts';
import { choice, flag, scalar, text } from '../definition/value-type.ts';

export const constant = defineNode({
  name: 'constant',
  parents: ['suit'],
  arguments: [
    argument('name', choice(...CONSTANT_WORDS.keys()), 'Which constant.'),
    argument('value', scalar, 'Its likely value: a figure with its unit, or a bare number for a share.'),
  ],
  properties: {
    low: optional(scalar, 'The least that is still believed.'),
    high: optional(scalar, 'The greatest that is still believed.'),
    exact: optional(flag, '#true in place of low and high: known without a spread that counts.'),
    source: needed(text, 'Where it comes from.'),
  },
  about: `A constant of the suit. ${[...CONSTANT_WORDS].map(([word, { unit, about }]) => `\`${word}\` (${unit === '1' ? 'a number' : unit}): ${about}`).join('; ')}.`,
  examples: {
    valid: [
      'constant oxygen-start-pressure "6.2 MPa" low="6.1 MPa" high="6.3 MPa" source="invented"',
      'constant respiratory-quotient 0.85 low=0.8 high=0.95 source="invented"',
      'constant water-latent-heat "2500 kJ/kg" exact=#true source="[RY89]"',
    ],
    invalid: [
      { text: 'constant oxygen-volum "7.5 L" exact=#true source="invented"', code: 'campaign/not-a-choice' },
      { text: 'constant oxygen-volume "7.5 L" exact=#true', code: 'campaign/missing-property' },
    ],
  },
});
