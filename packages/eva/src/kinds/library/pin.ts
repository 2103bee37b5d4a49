import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const pin = defineKind({
  id: 'pin',
  title: 'Pin',
  about: 'A push-button pin on a lanyard, through a lug or hinge.',
  aspects: [{ id: 'lock', values: ['in', 'out'], safe: { in: 'always', out: 'tonight' } }],
  carried: false,
  holds: 'nothing',
  attaches: { as: 'fastener', free: ['out'], fast: ['in'] },
  verbs: [
    defineVerb('pull', 'Pull {object}', [15, 30, 75], {
      aspect: 'lock',
      needs: ['in'],
      leaves: 'out',
      effort: 'moderate',
    }),
    defineVerb('insert', 'Insert {object}, push and pull to check', [20, 40, 100], {
      aspect: 'lock',
      needs: ['out'],
      leaves: 'in',
      effort: 'moderate',
      closing: true,
    }),
    defineVerb('check', 'Push and pull {object}', [10, 15, 30], { aspect: 'lock', needs: ['in'] }),
  ],
  properties: [],
  source: 'common practice',
});
