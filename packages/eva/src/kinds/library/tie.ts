import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const tie = defineKind({
  id: 'tie',
  title: 'Wire tie',
  about: 'A soft wire tie that keeps a cable on a rail. A cut tie is not tied again.',
  aspects: [{ id: 'tie', values: ['loose', 'tied', 'cut'], safe: { loose: 'always', tied: 'always', cut: 'always' } }],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['loose', 'cut'], fast: ['tied'] },
  verbs: [
    defineVerb('tie', 'Tie {object}', [20, 40, 90], { aspect: 'tie', needs: ['loose'], leaves: 'tied', closing: true }),
    defineVerb('untie', 'Untie {object}', [15, 30, 60], { aspect: 'tie', needs: ['tied'], leaves: 'loose' }),
    defineVerb('cut', 'Cut {object}, keep both ends', [20, 40, 80], {
      aspect: 'tie',
      needs: ['tied'],
      leaves: 'cut',
      toolKinds: ['cutter'],
    }),
  ],
  properties: [],
  source: 'common practice',
});
