import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const cap = defineKind({
  id: 'cap',
  title: 'Cap',
  about: 'A dust or shorting cap on its lanyard, over an open plug or receptacle.',
  aspects: [{ id: 'fit', values: ['fitted', 'off'], safe: { fitted: 'always', off: 'tonight' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('cap', 'Fit {object}', [15, 30, 60], { aspect: 'fit', needs: ['off'], leaves: 'fitted', closing: true }),
    defineVerb('uncap', 'Take off {object}', [15, 25, 50], { aspect: 'fit', needs: ['fitted'], leaves: 'off' }),
  ],
  properties: [],
  source: 'common practice',
});
