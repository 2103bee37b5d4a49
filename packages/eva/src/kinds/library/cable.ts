import { CARRY_VERBS, RETAIN_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const cable = defineKind({
  id: 'cable',
  title: 'Cable',
  about:
    'A harness on its reel or in its bag; laid out, routed along the rails, secured with ties. Its plugs name it with of=.',
  aspects: [
    {
      id: 'routing',
      values: ['stowed', 'laid', 'routed', 'secured'],
      safe: { stowed: 'always', laid: 'never', routed: 'tonight', secured: 'always' },
    },
    { id: 'retainer', values: ['none', 'tethered', 'gripped'], safe: {} },
  ],
  carried: true,
  holds: 'nothing',
  verbs: [
    ...CARRY_VERBS,
    ...RETAIN_VERBS,
    defineVerb('lay', 'Lay out {object}', [90, 180, 420], { aspect: 'routing', needs: ['stowed'], leaves: 'laid' }),
    defineVerb('route', 'Route {object}', [120, 240, 600], {
      aspect: 'routing',
      needs: ['stowed', 'laid'],
      leaves: 'routed',
      carry: 'put',
      effort: 'moderate',
    }),
    defineVerb('secure', 'Secure {object}, no loops', [60, 150, 360], {
      aspect: 'routing',
      needs: ['routed'],
      leaves: 'secured',
      closing: true,
    }),
    defineVerb('gather', 'Gather {object}', [90, 180, 420], {
      aspect: 'routing',
      needs: ['laid', 'routed'],
      leaves: 'stowed',
      carry: 'take',
      closing: true,
    }),
    defineVerb('inspect', 'Inspect {object}', [20, 45, 120]),
  ],
  properties: [{ id: 'length', type: 'length', about: 'Its length.' }],
  source: 'common practice',
});
