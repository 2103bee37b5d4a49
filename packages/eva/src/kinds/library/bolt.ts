import { FASTENER_PROPERTIES } from '../drive-properties.ts';
import { defineKind } from '../kind.ts';
import { THREAD_ASPECTS, THREAD_VERBS } from '../thread-verbs.ts';

export const bolt = defineKind({
  id: 'bolt',
  title: 'Bolt',
  about:
    'A threaded fastener driven with a power tool or a ratchet. Released means out of its thread and still kept in its hole; what a released bolt no longer holds is judged at the piece it belongs to.',
  aspects: THREAD_ASPECTS,
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['released'], fast: ['torqued'] },
  verbs: THREAD_VERBS,
  properties: FASTENER_PROPERTIES,
  source: 'common practice',
});
