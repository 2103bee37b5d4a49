import { defineResponse } from '../define-response.ts';

export const fastenerWillNotSeat = defineResponse({
  id: 'fastener-will-not-seat',
  title: 'Fastener does not seat',
  trigger: 'turns are short, or torque comes too early',
  kinds: ['bolt', 'captive-fastener'],
  steps: [
    'Stop, read torque and turns aloud.',
    'Back it out, look at the thread, take out what lies in it.',
    'Two turns by hand, then drive again.',
    'If it binds again: leave it started, make the others fast, put a strap on.',
  ],
  timeS: { low: 120, likely: 300, high: 780 },
  kit: ['ratchet'],
  outcome: 'It is fast, or the piece is held by the others for the night.',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
