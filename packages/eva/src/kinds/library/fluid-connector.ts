import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const fluidConnector = defineKind({
  id: 'fluid-connector',
  title: 'Fluid connector',
  about:
    'A quick-disconnect with a valve in the plug. The line is pressurised: it is opened and closed only with its controls set and verified, and the valve closed first.',
  aspects: [
    { id: 'mating', values: ['mated', 'demated'], safe: { mated: 'always', demated: 'tonight' } },
    { id: 'valve', values: ['open', 'closed'], safe: { open: 'always', closed: 'always' } },
  ],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'line', free: ['demated'], fast: ['mated'] },
  verbs: [
    defineVerb('close-valve', 'Close the valve of {object}', [20, 40, 90], {
      aspect: 'valve',
      needs: ['open'],
      leaves: 'closed',
      underControl: true,
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('open-valve', 'Open the valve of {object}, watch for leaks', [20, 45, 100], {
      aspect: 'valve',
      needs: ['closed'],
      alsoNeeds: [{ aspect: 'mating', values: ['mated'] }],
      leaves: 'open',
      underControl: true,
      effort: 'moderate',
      voice: true,
    }),
    defineVerb('demate', 'Demate {object}, keep your face away', [60, 150, 360], {
      aspect: 'mating',
      needs: ['mated'],
      alsoNeeds: [{ aspect: 'valve', values: ['closed'] }],
      leaves: 'demated',
      underControl: true,
      effort: 'high',
      voice: true,
    }),
    defineVerb('mate', 'Inspect seal and mate {object}', [80, 180, 420], {
      aspect: 'mating',
      needs: ['demated'],
      alsoNeeds: [{ aspect: 'valve', values: ['closed'] }],
      leaves: 'mated',
      underControl: true,
      effort: 'high',
      voice: true,
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object} for leaks', [20, 45, 90]),
  ],
  properties: [],
  source: 'common practice',
});
