import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const fairlead = defineKind({
  id: 'fairlead',
  title: 'Fairlead',
  about: 'A guide that a safety tether runs through, so that the way back is forced through the same point.',
  aspects: [{ id: 'gate', values: ['closed', 'open'], safe: { closed: 'always', open: 'always' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('open', 'Open {object}', [5, 10, 25], { aspect: 'gate', needs: ['closed'], leaves: 'open' }),
    defineVerb('close', 'Close {object} on the tether', [10, 15, 30], {
      aspect: 'gate',
      needs: ['open'],
      leaves: 'closed',
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [10, 20, 40]),
  ],
  properties: [],
  source: 'common practice',
});
