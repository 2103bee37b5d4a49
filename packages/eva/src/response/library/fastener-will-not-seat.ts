import { defineResponse } from '../define-response.ts';

export const fastenerWillNotSeat = defineResponse({
  id: 'fastener-will-not-seat',
  title: 'Fastener does not seat',
  trigger: 'turns are short, or torque comes too early',
  kinds: ['bolt', 'captive-fastener'],
  verbs: ['start', 'drive'],
  steps: [
    ['self', 'Stop, read torque and turns aloud.'],
    ['self', 'Back it out, look at the thread, take out what lies in it.'],
    ['self', 'Two turns by hand, then drive again.'],
    ['self', 'If it binds again: leave it started, make the others fast, put a strap on.'],
  ],
  timeS: { low: 120, likely: 300, high: 780 },
  kit: ['ratchet'],
  outcome: 'It is fast, or the piece is held by the others for the night.',
  leavesIt: 'started',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
