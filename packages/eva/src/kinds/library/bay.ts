import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const bay = defineKind({
  id: 'bay',
  title: 'Bay',
  about: 'A seat with guides for one box, tray or mast: the old one must be out before the new one goes in.',
  aspects: [],
  carried: false,
  holds: 'one-item',
  verbs: [defineVerb('inspect', 'Inspect {object}, guides clear', [15, 30, 75])],
  properties: [],
  source: 'common practice',
});
