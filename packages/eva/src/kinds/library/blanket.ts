import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const blanket = defineKind({
  id: 'blanket',
  title: 'Insulation blanket',
  about: 'Multi-layer insulation with hook-and-loop or snaps, folded back to reach what is under it.',
  aspects: [{ id: 'cover', values: ['closed', 'folded-back'], safe: { closed: 'always', 'folded-back': 'tonight' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('fold-back', 'Fold back {object} and keep it there', [45, 90, 200], {
      aspect: 'cover',
      needs: ['closed'],
      leaves: 'folded-back',
    }),
    defineVerb('close', 'Close {object}', [60, 120, 270], {
      aspect: 'cover',
      needs: ['folded-back'],
      leaves: 'closed',
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [15, 30, 60]),
  ],
  properties: [],
  source: 'common practice',
});
