import { defineResponse } from '../define-response.ts';

export const suitCaution = defineResponse({
  id: 'suit-caution',
  title: 'Suit caution',
  trigger: 'a caution tone and light in one suit',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Stop, hold on, read it aloud.'],
    ['both', 'Put the worksite into a state that may be left.'],
    ['reader', 'Name the limit that it touches and the time that is left.'],
    ['both', 'Terminate.'],
  ],
  timeS: { low: 60, likely: 180, high: 420 },
  kit: [],
  outcome: 'Both come in, with the vehicle left safe.',
  leavesIt: null,
  leadsTo: 'terminate',
  armStops: false,
  source: 'common practice, planning figure',
});
