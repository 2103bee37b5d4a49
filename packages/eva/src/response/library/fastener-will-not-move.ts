import { defineResponse } from '../define-response.ts';

export const fastenerWillNotMove = defineResponse({
  id: 'fastener-will-not-move',
  title: 'Fastener does not move',
  trigger: 'the driver stalls at its set torque, no turns',
  kinds: ['bolt', 'captive-fastener'],
  verbs: ['release', 'work-free'],
  steps: [
    ['self', 'Stop, read torque and turns aloud.'],
    ['self', 'Same torque in the other direction, a quarter turn, then back.'],
    ['self', 'Ratchet by hand, with the higher torque that IV reads out.'],
    ['self', 'Next fastener, come back to it last.'],
    ['self', 'If it still does not move: leave the rest fast, the piece stays.'],
  ],
  timeS: { low: 120, likely: 360, high: 900 },
  kit: ['ratchet'],
  outcome: 'It moves, or the piece stays where it is with its other fasteners fast.',
  leavesIt: 'stuck',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
