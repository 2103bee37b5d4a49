import { defineResponse } from '../define-response.ts';

export const armStopsWithRider = defineResponse({
  id: 'arm-stops-with-rider',
  title: 'Arm stops with somebody on it',
  trigger: 'the arm stops by itself or its operator calls a fault',
  kinds: ['arm'],
  steps: [
    'Operator: brakes on, hands off, say the pose.',
    'Rider: hold on, say what you carry and what you can reach.',
    'Tether the load to the plate.',
    'Climb down by the way that is named for this pose; the partner holds the first rail.',
  ],
  timeS: { low: 120, likely: 300, high: 720 },
  kit: [],
  outcome: 'The rider is on structure, the arm stays where it is. Without a named way down they wait on the plate.',
  leadsTo: 'terminate',
  armStops: true,
  source: 'common practice, planning figure',
});
