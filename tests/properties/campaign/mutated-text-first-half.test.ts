import { test } from 'vitest';
import { readMutations } from './mutated-text.ts';

test('fifty thousand spoilt texts are read without a fault', { timeout: 900_000 }, () => {
  readMutations(20310914, 50_000);
});
