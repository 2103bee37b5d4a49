import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const footRestraint = defineKind({
  id: 'foot-restraint',
  title: 'Foot restraint',
  about: 'A plate for both boots with a probe that seats in a socket. Its settings turn the person toward the work.',
  aspects: [],
  carried: true,
  holds: 'nothing',
  verbs: [
    ...CARRY_VERBS,
    defineVerb('seat', 'Seat {object}, pull and twist to check', [45, 90, 180], { carry: 'seat', effort: 'moderate' }),
    defineVerb('unseat', 'Unseat {object}', [30, 60, 120], { carry: 'unseat', effort: 'moderate' }),
    defineVerb('adjust', 'Set {object}', [20, 45, 100]),
  ],
  properties: [],
  source: 'common practice',
});
