import { defineResponse } from '../define-response.ts';

export const suitMessage = defineResponse({
  id: 'suit-message',
  title: 'Suit shows a message',
  trigger: 'a suit display shows a message without a tone',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Stop, read it aloud as it stands.'],
    ['reader', 'Look it up and compare it with the last readings.'],
    ['self', 'Go on when IV says so.'],
  ],
  timeS: { low: 60, likely: 120, high: 300 },
  kit: [],
  outcome: 'Work goes on, or the message becomes a caution.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
