import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const valve = defineKind({
  id: 'valve',
  title: 'Valve',
  about: 'A hand-worked valve in a pressurised line; worked with its controls set and verified.',
  aspects: [{ id: 'setting', values: ['open', 'closed'], safe: { open: 'always', closed: 'always' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('open', 'Open {object}, watch for leaks', [20, 45, 100], {
      aspect: 'setting',
      needs: ['closed'],
      leaves: 'open',
      underControl: true,
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('close', 'Close {object}', [20, 45, 100], {
      aspect: 'setting',
      needs: ['open'],
      leaves: 'closed',
      underControl: true,
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('check', 'Read {object}', [5, 10, 20]),
  ],
  properties: [],
  source: 'common practice',
});
