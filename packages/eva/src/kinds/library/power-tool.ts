import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { TOOL_PROPERTIES } from '../drive-properties.ts';
import { defineKind } from '../kind.ts';

export const powerTool = defineKind({
  id: 'power-tool',
  title: 'Power tool',
  about: 'A battery driver with settable torque, speed and turns.',
  aspects: [],
  carried: true,
  holds: 'nothing',
  verbs: [...CARRY_VERBS, defineVerb('adjust', 'Set {object}, read the settings back', [15, 30, 60], { voice: true })],
  properties: [
    { id: 'torque-least', type: 'torque', about: 'Lowest torque it can be set to.' },
    { id: 'torque-most', type: 'torque', about: 'Highest torque it can be set to.' },
    ...TOOL_PROPERTIES,
  ],
  source: 'common practice',
});
