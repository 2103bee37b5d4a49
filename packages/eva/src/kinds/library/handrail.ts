import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const handrail = defineKind({
  id: 'handrail',
  title: 'Handrail',
  about: 'A rail to hold on to; the ways between places run along handrails.',
  aspects: [],
  carried: false,
  holds: 'nothing',
  verbs: [defineVerb('inspect', 'Inspect {object} for sharp spots', [15, 30, 75])],
  properties: [],
  source: 'common practice',
});
