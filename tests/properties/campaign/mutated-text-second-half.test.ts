import { test } from 'vitest';
import { readMutations } from './mutated-text.ts';

test('fifty thousand more spoilt texts are read without a fault', { timeout: 900_000 }, () => {
  readMutations(20311002, 50_000);
});
