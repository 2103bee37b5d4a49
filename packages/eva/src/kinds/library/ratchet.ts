import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { TOOL_PROPERTIES } from '../drive-properties.ts';
import { defineKind } from '../kind.ts';

export const ratchet = defineKind({
  id: 'ratchet',
  title: 'Ratchet wrench',
  about: 'A hand-driven wrench, with or without a torque setting; the usual back-up for a power tool.',
  aspects: [],
  carried: true,
  holds: 'nothing',
  verbs: [...CARRY_VERBS, defineVerb('adjust', 'Set {object}', [15, 30, 60])],
  properties: [
    { id: 'torque-least', type: 'torque', about: 'Lowest torque it is used for.' },
    { id: 'torque-most', type: 'torque', about: 'Highest torque it is used for.' },
    ...TOOL_PROPERTIES,
  ],
  source: 'common practice',
});
