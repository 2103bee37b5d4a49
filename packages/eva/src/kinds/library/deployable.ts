import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const deployable = defineKind({
  id: 'deployable',
  title: 'Deployable',
  about:
    'A fin, wing or boom that unfolds where it stands. It holds energy in springs or motors: it is deployed and folded with its controls set and verified.',
  aspects: [
    {
      id: 'deployment',
      values: ['folded', 'part-way', 'deployed'],
      safe: { folded: 'always', 'part-way': 'never', deployed: 'next-eva' },
    },
    { id: 'lock', values: ['locked', 'unlocked'], safe: { locked: 'always', unlocked: 'tonight' } },
  ],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('deploy', 'Deploy {object}, stand clear of the sweep', [120, 300, 720], {
      aspect: 'deployment',
      needs: ['folded', 'part-way'],
      alsoNeeds: [{ aspect: 'lock', values: ['unlocked'] }],
      leaves: 'deployed',
      underControl: true,
      effort: 'high',
      voice: true,
    }),
    defineVerb('fold', 'Fold {object}, stand clear of the sweep', [150, 360, 900], {
      aspect: 'deployment',
      needs: ['part-way', 'deployed'],
      alsoNeeds: [{ aspect: 'lock', values: ['unlocked'] }],
      leaves: 'folded',
      underControl: true,
      effort: 'high',
      voice: true,
      closing: true,
    }),
    defineVerb('lock', 'Lock {object}', [20, 45, 120], {
      aspect: 'lock',
      needs: ['unlocked'],
      leaves: 'locked',
      effort: 'moderate',
      closing: true,
    }),
    defineVerb('unlock', 'Unlock {object}', [20, 45, 120], {
      aspect: 'lock',
      needs: ['locked'],
      leaves: 'unlocked',
      effort: 'moderate',
      underControl: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [30, 60, 150]),
    defineVerb('photograph', 'Photograph {object}', [20, 45, 90]),
  ],
  properties: [],
  source: 'common practice',
});
