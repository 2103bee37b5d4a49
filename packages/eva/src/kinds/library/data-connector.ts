import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const dataConnector = defineKind({
  id: 'data-connector',
  title: 'Data connector',
  about:
    'A signal plug and its receptacle, too weak to hurt anybody. Where it does carry power, use a power connector instead.',
  aspects: [{ id: 'mating', values: ['mated', 'demated'], safe: { mated: 'always', demated: 'next-eva' } }],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'line', free: ['demated'], fast: ['mated'] },
  verbs: [
    defineVerb('demate', 'Demate {object}', [30, 60, 120], {
      aspect: 'mating',
      needs: ['mated'],
      leaves: 'demated',
      underControl: false,
      effort: 'moderate',
    }),
    defineVerb('mate', 'Inspect and mate {object}, call locked', [40, 75, 160], {
      aspect: 'mating',
      needs: ['demated'],
      leaves: 'mated',
      underControl: false,
      effort: 'moderate',
      closing: true,
    }),
    defineVerb('inspect', 'Inspect pins of {object}', [20, 40, 80], { aspect: 'mating', needs: ['demated'] }),
    defineVerb('check', 'Check that {object} is locked', [10, 20, 40], { aspect: 'mating', needs: ['mated'] }),
  ],
  properties: [],
  source: 'common practice',
});
