import { FASTENER_PROPERTIES } from '../drive-properties.ts';
import { defineKind } from '../kind.ts';
import { THREAD_ASPECTS, THREAD_VERBS } from '../thread-verbs.ts';

export const captiveFastener = defineKind({
  id: 'captive-fastener',
  title: 'Captive fastener',
  about:
    'A threaded fastener that cannot leave its piece, lifted by a spring when it is out of its thread. It travels with the piece it belongs to.',
  aspects: THREAD_ASPECTS,
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['released'], fast: ['torqued'] },
  verbs: THREAD_VERBS,
  properties: FASTENER_PROPERTIES,
  source: 'common practice',
});
