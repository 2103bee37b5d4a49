import { defineResponse } from '../define-response.ts';

export const armStopsWithRider = defineResponse({
  id: 'arm-stops-with-rider',
  title: 'Arm stops with somebody on it',
  trigger: 'the arm stops by itself or its operator calls a fault',
  kinds: ['arm'],
  verbs: [],
  steps: [
    ['operator', 'Brakes on, hands off, say the pose.'],
    ['self', 'Hold on, say what you carry and what you can reach.'],
    ['self', 'Tether the load to the plate.'],
    ['partner', 'Go to the first rail of the way down that is named for this pose, and hold on there.'],
    ['self', 'Climb down by that way.'],
  ],
  timeS: { low: 120, likely: 300, high: 720 },
  kit: [],
  outcome: 'The rider is on structure, the arm stays where it is. Without a named way down they wait on the plate.',
  leavesIt: null,
  leadsTo: 'terminate',
  armStops: true,
  source: 'common practice, planning figure',
});
