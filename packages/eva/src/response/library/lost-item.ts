import { defineResponse } from '../define-response.ts';

export const lostItem = defineResponse({
  id: 'lost-item',
  title: 'Item lost',
  trigger: 'an item floats away, untethered',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Say what it is and which way it goes.'],
    ['self', 'Do not reach beyond your tether for it.'],
    ['reader', 'Tell the ground, with time and direction, and ask for tracking.'],
    ['self', 'Count what is left in the bag, and say whether the task can go on without it.'],
    ['partner', 'Look for what else may be loose.'],
  ],
  timeS: { low: 60, likely: 180, high: 480 },
  kit: [],
  outcome: 'The item is gone and reported. The task goes on without it, with a spare, or is dropped.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
