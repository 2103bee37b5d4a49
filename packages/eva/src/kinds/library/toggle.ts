import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const toggle = defineKind({
  id: 'toggle',
  title: 'Toggle',
  about: 'A toggle switch or breaker worked from outside.',
  aspects: [{ id: 'setting', values: ['on', 'off'], safe: { on: 'always', off: 'always' } }],
  carried: false,
  holds: 'nothing',
  verbs: [
    defineVerb('switch-on', 'Switch on {object}', [5, 15, 40], {
      aspect: 'setting',
      needs: ['off'],
      leaves: 'on',
      underControl: true,
      voice: true,
    }),
    defineVerb('switch-off', 'Switch off {object}', [5, 15, 40], {
      aspect: 'setting',
      needs: ['on'],
      leaves: 'off',
      voice: true,
      closing: true,
    }),
    defineVerb('check', 'Read {object}', [5, 10, 20]),
  ],
  properties: [],
  source: 'common practice',
});
