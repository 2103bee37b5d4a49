import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const latch = defineKind({
  id: 'latch',
  title: 'Latch',
  about: 'A hand-operated over-centre latch, hook or clamp that holds a piece without turns or torque.',
  aspects: [{ id: 'catch', values: ['latched', 'unlatched'], safe: { latched: 'always', unlatched: 'always' } }],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['unlatched'], fast: ['latched'] },
  verbs: [
    defineVerb('unlatch', 'Unlatch {object}', [10, 20, 45], {
      aspect: 'catch',
      needs: ['latched'],
      leaves: 'unlatched',
      effort: 'moderate',
    }),
    defineVerb('latch', 'Latch {object}, push to check', [15, 30, 60], {
      aspect: 'catch',
      needs: ['unlatched'],
      leaves: 'latched',
      effort: 'moderate',
      closing: true,
    }),
    defineVerb('check', 'Push and check {object}', [10, 15, 30], { aspect: 'catch', needs: ['latched'] }),
  ],
  properties: [],
  source: 'common practice',
});
