import { defineNode, needed, optional } from '../definition/define-node.ts';
import { flag, quantity, text } from '../definition/value-type.ts';

const temperature = quantity('temperature', '3 K', '1000 K');

export const touchLimit = defineNode({
  name: 'touch-limit',
  parents: ['document'],
  properties: {
    longest: optional(quantity('time', '0.1 s', '24 h'), 'Longest unbroken touch that this limit allows.'),
    'any-time': optional(flag, '#true in place of longest: a touch of any length.'),
    lowest: needed(temperature, 'Coldest surface that may be touched so long.'),
    highest: needed(temperature, 'Hottest surface that may be touched so long.'),
    source: needed(text, 'Where the limit comes from.'),
  },
  about:
    "The operator's limit on what a glove may touch, and for how long; several of them form a ladder, the longer the touch the narrower the band. None is built in.",
  examples: {
    valid: [
      'touch-limit longest="30 s" lowest="-110 °C" highest="110 °C" source="invented"',
      'touch-limit any-time=#true lowest="-40 °C" highest="60 °C" source="invented"',
    ],
    invalid: [
      { text: 'touch-limit longest="30 s" lowest="-110 °C" source="invented"', code: 'campaign/missing-property' },
      {
        text: 'touch-limit longest="30 s" lowest="-110 °C" highest="110 W" source="invented"',
        code: 'campaign/wrong-dimension',
      },
    ],
  },
});
