import { defineResponse } from '../define-response.ts';

export const suitWarning = defineResponse({
  id: 'suit-warning',
  title: 'Suit warning',
  trigger: 'a warning tone and light in one suit',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Hold on, read it aloud, switch as the suit maker says.'],
    ['partner', 'Stop work and watch the other.'],
    ['both', 'Leave things tethered, out of the restraint, go.'],
  ],
  timeS: { low: 30, likely: 90, high: 240 },
  kit: [],
  outcome: 'Both come in at once.',
  leavesIt: null,
  leadsTo: 'abort',
  armStops: false,
  source: 'common practice, planning figure',
});
