import { fittedVerbs, SEATING, SEATING_SAFE, SEATING_VALUES } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const mast = defineKind({
  id: 'mast',
  title: 'Mast',
  about: 'A long appendage that is carried out, seated on its foot, fastened, and unfolded by hand.',
  aspects: [
    { id: 'fastening', values: SEATING_VALUES, safe: SEATING_SAFE },
    {
      id: 'deployment',
      values: ['folded', 'part-way', 'deployed'],
      safe: { folded: 'always', 'part-way': 'never', deployed: 'always' },
    },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'items',
  seating: SEATING,
  verbs: [
    ...fittedVerbs('fastening', 'high', { take: [60, 120, 270], seat: [120, 240, 540] }),
    defineVerb('deploy', 'Unfold {object} by hand until it locks', [120, 240, 600], {
      aspect: 'deployment',
      needs: ['folded', 'part-way'],
      alsoNeeds: [{ aspect: 'fastening', values: ['fastened'] }],
      leaves: 'deployed',
      effort: 'high',
      voice: true,
    }),
    defineVerb('fold', 'Fold {object}', [120, 300, 720], {
      aspect: 'deployment',
      needs: ['part-way', 'deployed'],
      leaves: 'folded',
      effort: 'high',
      voice: true,
      closing: true,
    }),
  ],
  properties: [
    { id: 'soft-capture', type: 'boolean', about: 'Its foot keeps it in place with every fastener released.' },
  ],
  source: 'common practice',
});
