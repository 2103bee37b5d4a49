import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineKind } from '../kind.ts';

export const handTool = defineKind({
  id: 'hand-tool',
  title: 'Hand tool',
  about: 'A tool without turns or torque: a probe, scraper, mirror, pry bar.',
  aspects: [],
  carried: true,
  holds: 'nothing',
  verbs: CARRY_VERBS,
  properties: [],
  source: 'common practice',
});
