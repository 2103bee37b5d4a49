import { defineResponse } from '../define-response.ts';

export const tetherSnag = defineResponse({
  id: 'tether-snag',
  title: 'Tether is caught',
  trigger: 'the reel stops, or the tether goes round something',
  kinds: [],
  steps: [
    'Stop. Say where it leads.',
    'Never open the only hook.',
    'Go back along it to where it is caught and lift it off.',
    'If it is out of reach: local tether on, the partner frees it.',
  ],
  timeS: { low: 60, likely: 180, high: 480 },
  kit: [],
  outcome: 'The tether runs free again.',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
