import { defineResponse } from '../define-response.ts';

export const restraintWillNotSeat = defineResponse({
  id: 'restraint-will-not-seat',
  title: 'Foot restraint does not seat',
  trigger: 'the probe does not lock, or it turns when pulled',
  kinds: ['foot-restraint'],
  verbs: ['seat'],
  steps: [
    ['self', 'Take it out, look into the socket and at the probe.'],
    ['self', 'Turn it to the next position and seat it again.'],
    ['self', 'Pull and twist to check.'],
    ['self', 'If it does not lock: the other socket, or work from the rail with a local tether.'],
  ],
  timeS: { low: 90, likely: 240, high: 600 },
  kit: [],
  outcome: 'It is seated, or the work is done without it and takes longer.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
