import { defineResponse } from '../define-response.ts';

export const lostItem = defineResponse({
  id: 'lost-item',
  title: 'Item lost',
  trigger: 'an item floats away, untethered',
  kinds: [],
  steps: [
    'Say what it is and which way it goes.',
    'Do not reach beyond your tether for it.',
    'IV tells the ground, with time and direction, and asks for tracking.',
    'Count what is left in the bag, and say whether the task can go on without it.',
    'Look for what else may be loose.',
  ],
  timeS: { low: 60, likely: 180, high: 480 },
  kit: [],
  outcome: 'The item is gone and reported. The task goes on without it, with a spare, or is dropped.',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
