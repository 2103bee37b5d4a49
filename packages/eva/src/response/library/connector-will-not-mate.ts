import { defineResponse } from '../define-response.ts';

export const connectorWillNotMate = defineResponse({
  id: 'connector-will-not-mate',
  title: 'Connector does not mate',
  trigger: 'no lock is felt or seen',
  kinds: ['power-connector', 'data-connector', 'fluid-connector'],
  verbs: ['mate'],
  steps: [
    ['self', 'Take it off, look at pins, seal and key.'],
    ['self', 'Look for loose bits, blow or brush them off.'],
    ['self', 'Align by the key and push again, no tool.'],
    ['self', 'If it does not lock: cap both halves, take a picture, say what stays without power.'],
  ],
  timeS: { low: 120, likely: 360, high: 900 },
  kit: [],
  outcome: 'It is mated, or capped and left for another day.',
  leavesIt: 'demated',
  leadsTo: null,
  armStops: false,
  source: 'common practice, planning figure',
});
