import { fittedVerbs, SEATING, SEATING_SAFE, SEATING_VALUES } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const tray = defineKind({
  id: 'tray',
  title: 'Exposure tray',
  about: 'A hinged tray of samples on the outside, taken off its frame and brought in. Its face is not touched.',
  aspects: [
    { id: 'fastening', values: SEATING_VALUES, safe: SEATING_SAFE },
    { id: 'lid', values: ['open', 'closed'], safe: { open: 'always', closed: 'always' } },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'nothing',
  seating: SEATING,
  verbs: [
    ...fittedVerbs('fastening', 'moderate', { take: [30, 60, 150], seat: [45, 90, 200] }),
    defineVerb('close', 'Close {object}', [15, 30, 75], {
      aspect: 'lid',
      needs: ['open'],
      leaves: 'closed',
      closing: true,
    }),
    defineVerb('open', 'Open {object}', [15, 30, 75], { aspect: 'lid', needs: ['closed'], leaves: 'open' }),
  ],
  properties: [
    { id: 'soft-capture', type: 'boolean', about: 'Its guides keep it in place with every fastener released.' },
  ],
  source: 'common practice',
});
