import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { references } from '../../../tools/generate-reference.ts';

test.each(Object.entries(references()))('%s is up to date with the definitions', (path, text) => {
  expect(readFileSync(path, 'utf8')).toBe(text);
});
