import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const hatch = defineKind({
  id: 'hatch',
  title: 'Hatch',
  about: 'A pressure hatch or its thermal cover, opened and closed from outside.',
  aspects: [{ id: 'lid', values: ['closed', 'open'], safe: { closed: 'always', open: 'never' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('open', 'Open {object}', [60, 150, 360], {
      aspect: 'lid',
      needs: ['closed'],
      leaves: 'open',
      effort: 'high',
      voice: true,
      underControl: true,
    }),
    defineVerb('close', 'Close {object}, seal clean', [60, 180, 420], {
      aspect: 'lid',
      needs: ['open'],
      leaves: 'closed',
      effort: 'high',
      voice: true,
      closing: true,
    }),
    defineVerb('inspect', 'Inspect the seal of {object}', [20, 45, 120]),
  ],
  properties: [],
  source: 'common practice',
});
