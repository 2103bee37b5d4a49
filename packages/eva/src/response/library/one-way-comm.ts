import { defineResponse } from '../define-response.ts';

export const oneWayComm = defineResponse({
  id: 'one-way-comm',
  title: 'Voice works one way only',
  trigger: 'one is heard but does not hear, or the other way round',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Check volume and channel, switch to the second radio.'],
    ['both', 'Agree on signs: thumb up, arms crossed, point to the hatch.'],
    ['partner', 'Repeat each call by sign; no hazardous step begins.'],
    ['both', 'If it is not back before the next gate, terminate.'],
  ],
  timeS: { low: 60, likely: 180, high: 420 },
  kit: [],
  outcome: 'Voice is back, or the two work within sight of each other until they end.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
