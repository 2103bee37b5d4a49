import { defineResponse } from '../define-response.ts';

export const twoWayComm = defineResponse({
  id: 'two-way-comm',
  title: 'No voice with one of them',
  trigger: 'no answer on any channel',
  kinds: [],
  verbs: [],
  steps: [
    ['both', 'Check volume and channel, switch to the second radio.'],
    ['partner', 'Go within sight and make the sign for the hatch.'],
    ['both', 'No hazardous step begins; requests stay as they are.'],
    ['both', 'Terminate.'],
  ],
  timeS: { low: 120, likely: 300, high: 600 },
  kit: [],
  outcome: 'Both come in within sight of each other.',
  leavesIt: null,
  leadsTo: 'terminate',
  armStops: false,
  source: 'common practice, planning figure',
});
