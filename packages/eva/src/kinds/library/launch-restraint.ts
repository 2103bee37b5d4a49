import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const launchRestraint = defineKind({
  id: 'launch-restraint',
  title: 'Launch restraint',
  about:
    'A bolt, bracket or strap that held a piece for launch and comes off once. After that it is a loose item, to be stowed and counted.',
  aspects: [{ id: 'grip', values: ['engaged', 'removed'], safe: { engaged: 'always', removed: 'always' } }],
  carried: true,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['removed'], fast: ['engaged'] },
  verbs: [
    ...CARRY_VERBS,
    defineVerb('remove', 'Remove {object}, tethered to you first', [60, 120, 300], {
      aspect: 'grip',
      needs: ['engaged'],
      leaves: 'removed',
      carry: 'take',
      toolKinds: ['power-tool', 'ratchet'],
      effort: 'moderate',
      voice: true,
    }),
  ],
  properties: [],
  source: 'common practice',
});
