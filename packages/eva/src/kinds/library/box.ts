import { fittedVerbs, SEATING, SEATING_SAFE, SEATING_VALUES } from '../carry-verbs.ts';
import { defineKind } from '../kind.ts';

export const box = defineKind({
  id: 'box',
  title: 'Box',
  about:
    'A replaceable unit with handles, held by the fasteners and fed by the connectors that name it with of=. It may be taken only when all of them have let go.',
  aspects: [
    { id: 'fastening', values: SEATING_VALUES, safe: SEATING_SAFE },
    { id: 'power', values: ['on', 'off'], safe: { on: 'always', off: 'always' } },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'items',
  seating: SEATING,
  verbs: fittedVerbs('fastening', 'high', { take: [45, 90, 210], seat: [90, 180, 420] }),
  properties: [
    { id: 'handles', type: 'number', about: 'How many handles it has; with none, it is held by its edges.' },
    { id: 'soft-capture', type: 'boolean', about: 'Its guides keep it in place with every fastener released.' },
  ],
  source: 'common practice',
});
