import { defineResponse } from '../define-response.ts';

export const gloveDamage = defineResponse({
  id: 'glove-damage',
  title: 'Glove is damaged',
  trigger: 'a cut, a hole or a worn layer is seen on a glove',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Show it to the camera, say which finger and how deep.'],
    ['self', 'Hands off sharp edges and hot rails.'],
    ['reader', 'Judge it with the picture: the outer layer only, terminate; a deeper layer, abort.'],
  ],
  timeS: { low: 60, likely: 150, high: 360 },
  kit: [],
  outcome: 'Both come in; the deeper the damage, the sooner.',
  leavesIt: null,
  leadsTo: 'terminate',
  armStops: false,
  source: 'common practice, planning figure',
});
