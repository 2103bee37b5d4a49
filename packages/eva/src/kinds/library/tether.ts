import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const tether = defineKind({
  id: 'tether',
  title: 'Tether',
  about: 'A local or equipment tether: the next hook is closed and locked before the last one opens.',
  aspects: [{ id: 'hook', values: ['hooked', 'off'], safe: { hooked: 'always', off: 'always' } }],
  carried: true,
  holds: 'nothing',
  verbs: [
    ...CARRY_VERBS,
    defineVerb('hook', 'Hook {object}, closed and locked', [10, 20, 45], { aspect: 'hook', leaves: 'hooked' }),
    defineVerb('unhook', 'Unhook {object}, the other hook first', [10, 20, 45], {
      aspect: 'hook',
      needs: ['hooked'],
      leaves: 'off',
    }),
  ],
  properties: [{ id: 'length', type: 'length', about: 'Its length.' }],
  source: 'common practice',
});
