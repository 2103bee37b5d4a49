import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const arm = defineKind({
  id: 'arm',
  title: 'Arm',
  about:
    'A robotic arm moved by its operator. It stands still while somebody mounts, dismounts, or grips structure and arm together.',
  aspects: [],
  carried: false,
  holds: 'items',
  verbs: [
    defineVerb('mount', 'Get on the plate of {object}, arm safed', [90, 180, 420], { effort: 'moderate', voice: true }),
    defineVerb('dismount', 'Get off the plate of {object}, arm safed', [60, 150, 300], {
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('ride', 'Ride {object}; the rider calls the motion', [120, 240, 480], { voice: true }),
    defineVerb('move', 'Move {object}', [90, 180, 360], { voice: true }),
    defineVerb('carry', 'Carry the load with {object}', [120, 240, 480], { voice: true }),
    defineVerb('hold', 'Hold still', [30, 60, 120]),
    defineVerb('safe', 'Safe {object}: brakes on, call it', [15, 30, 60], { voice: true }),
    defineVerb('park', 'Park {object}', [60, 180, 360]),
  ],
  properties: [],
  source: 'common practice',
});
