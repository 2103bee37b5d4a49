import { defineResponse } from '../define-response.ts';

export const partnerSilent = defineResponse({
  id: 'partner-silent',
  title: 'Partner does not respond',
  trigger: 'no answer by voice, and no movement seen',
  kinds: [],
  verbs: [],
  steps: [
    ['partner', 'Call once on each channel.'],
    ['reader', 'Read the suit data aloud.'],
    ['partner', 'Go to them, look through the visor, check the reserve.'],
    ['partner', 'Free them from what holds them, tether them to you.'],
    ['partner', 'Bring them to the hatch and pass them in first.'],
  ],
  timeS: { low: 60, likely: 120, high: 240 },
  kit: [],
  outcome: 'One is brought in by the other.',
  leavesIt: null,
  leadsTo: 'assist',
  armStops: false,
  source: 'common practice, planning figure',
});
