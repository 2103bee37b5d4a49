import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const cover = defineKind({
  id: 'cover',
  title: 'Cover',
  about: 'A hinged or tethered cover over a worksite; it stays with the vehicle.',
  aspects: [{ id: 'lid', values: ['closed', 'open'], safe: { closed: 'always', open: 'tonight' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('open', 'Open {object}', [30, 60, 120], { aspect: 'lid', needs: ['closed'], leaves: 'open' }),
    defineVerb('close', 'Close {object}', [30, 75, 150], {
      aspect: 'lid',
      needs: ['open'],
      leaves: 'closed',
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [15, 30, 60]),
  ],
  properties: [],
  source: 'common practice',
});
