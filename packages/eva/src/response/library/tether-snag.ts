import { defineResponse } from '../define-response.ts';

export const tetherSnag = defineResponse({
  id: 'tether-snag',
  title: 'Tether is caught',
  trigger: 'the reel stops, or the tether goes round something',
  kinds: [],
  verbs: [],
  steps: [
    ['self', 'Stop. Say where it leads.'],
    ['self', 'Never open the only hook.'],
    ['self', 'Go back along it to where it is caught and lift it off.'],
    ['partner', 'If it is out of reach of the one who hangs on it: free it, while they stay on a local tether.'],
  ],
  timeS: { low: 60, likely: 180, high: 480 },
  kit: [],
  outcome: 'The tether runs free again.',
  leavesIt: null,
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
