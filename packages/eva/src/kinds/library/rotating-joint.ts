import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const rotatingJoint = defineKind({
  id: 'rotating-joint',
  title: 'Rotating joint',
  about:
    'A joint that turns a wing or a fin. Nobody works or passes in its sweep unless it is parked; locked means a lock pin holds it even if it is commanded.',
  aspects: [
    {
      id: 'motion',
      values: ['turning', 'parked', 'locked'],
      safe: { turning: 'always', parked: 'always', locked: 'next-eva' },
    },
  ],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('lock', 'Lock {object}', [60, 120, 300], {
      aspect: 'motion',
      needs: ['parked'],
      leaves: 'locked',
      underControl: true,
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('unlock', 'Unlock {object}', [60, 120, 300], {
      aspect: 'motion',
      needs: ['locked'],
      leaves: 'parked',
      underControl: true,
      effort: 'moderate',
      voice: true,
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [30, 90, 240], { aspect: 'motion', needs: ['parked', 'locked'] }),
  ],
  properties: [],
  source: 'common practice',
});
