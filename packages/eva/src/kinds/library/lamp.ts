import { fittedVerbs, SEATING, SEATING_SAFE, SEATING_VALUES } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const lamp = defineKind({
  id: 'lamp',
  title: 'Lamp',
  about: 'A floodlight on the outside, on its bracket or in a bag.',
  aspects: [
    { id: 'fastening', values: SEATING_VALUES, safe: SEATING_SAFE },
    { id: 'switch', values: ['on', 'off'], safe: { on: 'always', off: 'always' } },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'nothing',
  seating: SEATING,
  verbs: [
    ...fittedVerbs('fastening', 'moderate', { take: [30, 60, 120], seat: [40, 75, 150] }),
    defineVerb('switch-on', 'Switch on {object}', [5, 10, 30], { aspect: 'switch', needs: ['off'], leaves: 'on' }),
    defineVerb('switch-off', 'Switch off {object}', [5, 10, 30], { aspect: 'switch', needs: ['on'], leaves: 'off' }),
    defineVerb('aim', 'Aim {object}', [20, 45, 120]),
  ],
  properties: [],
  source: 'common practice',
});
