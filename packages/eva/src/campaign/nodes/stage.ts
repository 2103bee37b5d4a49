import { defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, decimal, quantity } from '../definition/value-type.ts';

const pressure = quantity('pressure', '10 kPa', '150 kPa');

export const stage = defineNode({
  name: 'stage',
  parents: ['prebreathe'],
  repeat: 'at-least-once',
  title: true,
  properties: {
    role: needed(
      choice('oxygen', 'hold'),
      'oxygen: counts as pre-breathe; hold: at a staged pressure or in cabin air, neither counts nor interrupts.',
    ),
    pressure: needed(pressure, 'Absolute, where it begins.'),
    'to-pressure': optional(pressure, 'Where it ends; the change is even. Absent: it stays.'),
    oxygen: needed(decimal(0.1, 1), 'Share of oxygen in what is breathed.'),
    minutes: needed(decimal(0, 10_080, 'min'), 'How long.'),
    exercise: optional(decimal(0, 80), 'Oxygen uptake while exercising, mL/kg/min. Absent: at rest.'),
  },
  about: 'One stage of a pre-breathe, in order.',
  examples: {
    valid: [
      'stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=240',
      'stage "pressure going down" role=oxygen pressure="101.3 kPa" to-pressure="70.3 kPa" oxygen=1 minutes=30',
    ],
    invalid: [
      { text: 'stage role=oxygen pressure="101.3 kPa" minutes=240', code: 'campaign/missing-property' },
      { text: 'stage role=oxygen pressure="101.3 kPa" oxygen=100 minutes=240', code: 'campaign/out-of-range' },
    ],
  },
});
