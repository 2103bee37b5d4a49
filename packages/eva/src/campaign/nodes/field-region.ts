import { defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, quantity } from '../definition/value-type.ts';

export const fieldRegion = defineNode({
  name: 'field-region',
  parents: ['document'],
  repeat: 'at-most-once',
  properties: {
    threshold: needed(quantity('magnetic-flux-density', '10000 nT', '70000 nT'), 'Inside where the field is weaker.'),
    at: optional(
      choice('ground', 'vehicle'),
      'Where the field is taken: on the ground below, or at the vehicle. Absent: ground.',
    ),
    exposure: optional(
      quantity('time', '0 s', '24 h'),
      'Longest time inside in one EVA, by the operator. Absent: no limit is checked.',
    ),
  },
  about:
    'The region of weak magnetic field: a proxy that marks where the inner belt dips low. It measures no dose and knows no solar events.',
  examples: {
    valid: ['field-region threshold="24000 nT" at=ground exposure="40 min"'],
    invalid: [
      { text: 'field-region', code: 'campaign/missing-property' },
      { text: 'field-region threshold="24 nT"', code: 'campaign/out-of-range' },
    ],
  },
});
