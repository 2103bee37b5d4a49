import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const powerConnector = defineKind({
  id: 'power-connector',
  title: 'Power connector',
  about:
    'A power plug and its receptacle. It is never opened or closed live: the requests that take the power away upstream must be set and verified first.',
  aspects: [{ id: 'mating', values: ['mated', 'demated'], safe: { mated: 'always', demated: 'tonight' } }],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'line', free: ['demated'], fast: ['mated'] },
  verbs: [
    defineVerb('demate', 'Demate {object}, call pins and seal', [40, 75, 150], {
      aspect: 'mating',
      needs: ['mated'],
      leaves: 'demated',
      underControl: true,
      effort: 'moderate',
      voice: true,
      source: 'remove power upstream before mating or demating: common practice; times: planning figure',
    }),
    defineVerb('mate', 'Inspect and mate {object}, call locked', [45, 90, 200], {
      aspect: 'mating',
      needs: ['demated'],
      leaves: 'mated',
      underControl: true,
      effort: 'moderate',
      voice: true,
      closing: true,
      source: 'remove power upstream before mating or demating: common practice; times: planning figure',
    }),
    defineVerb('inspect', 'Inspect pins and seal of {object}', [20, 40, 80], { aspect: 'mating', needs: ['demated'] }),
    defineVerb('check', 'Check that {object} is locked', [10, 20, 40], { aspect: 'mating', needs: ['mated'] }),
  ],
  properties: [],
  source: 'common practice',
});
