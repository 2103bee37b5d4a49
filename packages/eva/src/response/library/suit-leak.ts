import { defineResponse } from '../define-response.ts';

export const suitLeak = defineResponse({
  id: 'suit-leak',
  title: 'Suit leaks',
  trigger: 'suit pressure falls, or its feed flows without need',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Say it. Reserve supply on, as the suit maker says.'],
    ['self', 'Feel for the leak only if it is within reach of your hands.'],
    ['self', 'Out of the restraint, to the hatch by the straight way.'],
    ['partner', 'Follow within sight.'],
    ['reader', 'Ready the lock to be pressurised as soon as both are in.'],
  ],
  timeS: { low: 20, likely: 60, high: 150 },
  kit: [],
  outcome: "Both come in at once. Whether the reserve lasts is the suit maker's figure.",
  leavesIt: null,
  leadsTo: 'abort',
  armStops: false,
  source: 'common practice, planning figure',
});
