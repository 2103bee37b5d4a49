import { defineResponse } from '../define-response.ts';

export const twoWayComm = defineResponse({
  id: 'two-way-comm',
  title: 'No voice with one of them',
  trigger: 'no answer on any channel',
  kinds: [],
  steps: [
    'Check volume and channel, switch to the second radio.',
    'The other goes within sight and makes the sign for the hatch.',
    'No hazardous step begins; requests stay as they are.',
    'Terminate.',
  ],
  timeS: { low: 120, likely: 300, high: 600 },
  kit: [],
  outcome: 'Both come in within sight of each other.',
  leadsTo: 'terminate',
  armStops: false,
  source: 'common practice, planning figure',
});
