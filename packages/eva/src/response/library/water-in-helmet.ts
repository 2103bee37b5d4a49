import { defineResponse } from '../define-response.ts';

export const waterInHelmet = defineResponse({
  id: 'water-in-helmet',
  title: 'Water in the helmet',
  trigger: 'drops, a wet pad, or a wet vent',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Say how much and where, stop moving your head.'],
    ['self', 'Drink from the bag only if IV says so; pad dry with the inside of the helmet pad.'],
    ['self', 'Reserve flow as the suit maker says.'],
    ['both', 'Tidy nothing: out of the restraint and go, the partner leads.'],
  ],
  timeS: { low: 30, likely: 90, high: 240 },
  kit: [],
  outcome: 'Both come in at once; the wet suit is opened first.',
  leavesIt: null,
  leadsTo: 'abort',
  armStops: false,
  source: 'common practice, planning figure',
});
