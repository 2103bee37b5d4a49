import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const place = defineKind({
  id: 'place',
  title: 'Place',
  about: 'A place named as the object of a step.',
  aspects: [],
  carried: false,
  holds: 'items',
  verbs: [
    defineVerb('inspect', 'Inspect {object}', [30, 60, 180]),
    defineVerb('photograph', 'Photograph {object}', [30, 60, 150]),
    defineVerb('tidy', 'Tidy {object}, count what came out', [60, 150, 360]),
    defineVerb('set-up', 'Set up {object}', [90, 240, 600], { effort: 'moderate' }),
  ],
  properties: [],
  source: 'common practice',
});
