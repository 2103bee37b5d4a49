import { CARRY_VERBS } from '../carry-verbs.ts';
import { defineKind } from '../kind.ts';

export const bag = defineKind({
  id: 'bag',
  title: 'Bag',
  about: 'A soft carrier with inside tether points. What is in it moves with it; bags go into bags.',
  aspects: [],
  carried: true,
  holds: 'items',
  verbs: CARRY_VERBS,
  properties: [{ id: 'items-most', type: 'number', about: 'How many pieces it takes.' }],
  source: 'common practice',
});
