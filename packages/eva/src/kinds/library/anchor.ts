import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const anchor = defineKind({
  id: 'anchor',
  title: 'Anchor',
  about: 'A rated ring or rail end for a safety tether.',
  aspects: [],
  carried: false,
  holds: 'items',
  verbs: [defineVerb('inspect', 'Inspect {object}', [10, 20, 40])],
  properties: [{ id: 'tethers-most', type: 'number', about: 'How many safety tethers it may take at once.' }],
  source: 'common practice',
});
