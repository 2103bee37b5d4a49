/** What all threaded fasteners have in common: the states of the thread and what is done to it. */
import { defineVerb } from './define-verb.ts';
import type { Aspect, Verb } from './kind.ts';

export const THREAD_ASPECTS: readonly Aspect[] = [
  {
    id: 'thread',
    values: ['torqued', 'started', 'released', 'stuck'],
    safe: { torqued: 'always', started: 'tonight', released: 'always', stuck: 'next-eva' },
  },
];

export const THREAD_VERBS: readonly Verb[] = [
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
];
