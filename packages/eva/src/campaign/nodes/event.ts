import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, flag, utc } from '../definition/value-type.ts';

export const event = defineNode({
  name: 'event',
  parents: ['document'],
  arguments: [argument('id', declaresId('event'), 'Short name.')],
  title: true,
  properties: {
    at: needed(utc, 'When it happens.'),
    agreed: optional(flag, 'Agreed with its owner. Absent: no.'),
  },
  about: 'Something outside the plan that happens at a known instant and may change hardware.',
  examples: {
    valid: [
      'event cargo-berthing "Cargo ship berths" at="2031-10-02T09:00:00Z" agreed=#true { leaves port-a occupied }',
    ],
    invalid: [{ text: 'event cargo-berthing', code: 'campaign/missing-property' }],
  },
});
