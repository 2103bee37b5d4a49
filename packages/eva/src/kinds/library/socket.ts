import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const socket = defineKind({
  id: 'socket',
  title: 'Socket',
  about: 'A fixed receptacle at a worksite for one foot restraint.',
  aspects: [],
  carried: false,
  holds: 'one-restraint',
  verbs: [defineVerb('inspect', 'Inspect {object}', [10, 20, 40])],
  properties: [],
  source: 'common practice',
});
