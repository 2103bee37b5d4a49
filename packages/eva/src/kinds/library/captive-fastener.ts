import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const captiveFastener = defineKind({
  id: 'captive-fastener',
  title: 'Captive fastener',
  about:
    'A threaded fastener that cannot leave its piece, lifted by a spring when it is out of its thread. It travels with the piece it belongs to.',
  aspects: [
    {
      id: 'thread',
      values: ['torqued', 'started', 'released', 'stuck'],
      safe: { torqued: 'always', started: 'tonight', released: 'always', stuck: 'next-eva' },
    },
  ],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['released'], fast: ['torqued'] },
  verbs: [
    defineVerb('release', 'Release {object}, call turns', [15, 25, 50], {
      aspect: 'thread',
      needs: ['torqued', 'started'],
      leaves: 'released',
      perTurnS: 2,
      toolKinds: ['power-tool', 'ratchet'],
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('start', 'Start {object} by hand, two turns', [15, 30, 60], {
      aspect: 'thread',
      needs: ['released'],
      leaves: 'started',
    }),
    defineVerb('drive', 'Drive {object}, call turns and torque', [15, 30, 60], {
      aspect: 'thread',
      needs: ['released', 'started'],
      leaves: 'torqued',
      perTurnS: 2,
      toolKinds: ['power-tool', 'ratchet'],
      effort: 'moderate',
      voice: true,
      closing: true,
    }),
    defineVerb('work-free', 'Work {object} free with the ratchet, count the turns', [90, 240, 720], {
      aspect: 'thread',
      needs: ['stuck'],
      leaves: 'released',
      toolKinds: ['ratchet'],
      effort: 'high',
      voice: true,
    }),
    defineVerb('check', 'Check torque on {object}', [15, 25, 45], {
      aspect: 'thread',
      needs: ['torqued'],
      toolKinds: ['power-tool', 'ratchet'],
    }),
    defineVerb('inspect', 'Inspect {object}', [10, 20, 40]),
  ],
  properties: [
    {
      id: 'thread',
      type: 'text',
      about: 'Thread designation, for example M8x1.25: preload and torque window are worked out from it.',
    },
    { id: 'head', type: 'text', about: 'Head size, so that the socket fits.' },
  ],
  source: 'common practice',
});
