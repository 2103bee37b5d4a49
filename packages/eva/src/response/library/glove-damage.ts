import { defineResponse } from '../define-response.ts';

export const gloveDamage = defineResponse({
  id: 'glove-damage',
  title: 'Glove is damaged',
  trigger: 'a cut, a hole or a worn layer is seen on a glove',
  kinds: [],
  steps: [
    'Show it to the camera, say which finger and how deep.',
    'Hands off sharp edges and hot rails.',
    'IV judges it with the picture: the outer layer only, terminate; a deeper layer, abort.',
  ],
  timeS: { low: 60, likely: 150, high: 360 },
  kit: [],
  outcome: 'Both come in; the deeper the damage, the sooner.',
  leadsTo: 'terminate',
  armStops: false,
  source: 'common practice, planning figure',
});
