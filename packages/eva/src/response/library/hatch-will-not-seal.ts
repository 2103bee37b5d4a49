import { defineResponse } from '../define-response.ts';

export const hatchWillNotSeal = defineResponse({
  id: 'hatch-will-not-seal',
  title: 'Hatch does not seal',
  trigger: 'the pressure of the lock does not hold with the hatch closed',
  kinds: ['hatch'],
  verbs: ['close'],
  steps: [
    ['self', 'Hatch open again, look at the seal and its face, both lights on it.'],
    ['self', 'Wipe it, take off what lies in it.'],
    ['self', 'Close it slowly and watch the pressure.'],
    ['reader', 'After two tries: the inner hatch stays closed, go to the plan for the other lock.'],
  ],
  timeS: { low: 180, likely: 420, high: 900 },
  kit: [],
  outcome: 'The hatch is closed, or the crew waits in their suits for the other lock.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
