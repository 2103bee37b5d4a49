import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineKind } from '../kind.ts';

export const cutter = defineKind({
  id: 'cutter',
  title: 'Cutter',
  about: 'Scissors or cable cutters; its blade is covered when it is not in use.',
  aspects: [],
  carried: true,
  holds: 'nothing',
  verbs: CARRY_VERBS,
  properties: [],
  source: 'common practice',
});
