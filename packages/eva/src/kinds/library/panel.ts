import { fittedVerbs, SEATING, SEATING_SAFE, SEATING_VALUES } from '../carry-verbs.ts';
import { defineKind } from '../kind.ts';

export const panel = defineKind({
  id: 'panel',
  title: 'Panel',
  about: 'A removable access or shield panel. One that stays on its hinge is a cover.',
  aspects: [
    { id: 'fastening', values: SEATING_VALUES, safe: SEATING_SAFE },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'nothing',
  seating: SEATING,
  verbs: fittedVerbs('fastening', 'moderate', { take: [30, 60, 150], seat: [60, 120, 300] }),
  properties: [
    { id: 'soft-capture', type: 'boolean', about: 'Its edges keep it in place with every fastener released.' },
  ],
  source: 'common practice',
});
