import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { WIRE_CODES } from '@handrail/wire/error-codes';
import { expect, test } from 'vitest';

test('every fault of the wire is explained, and nothing else is', () => {
  const folder = 'packages/wire/src';
  const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && file !== 'error-codes.ts')
    .map((file) => readFileSync(join(folder, file), 'utf8'));
  const thrown = new Set(
    sources.flatMap((text) => [...text.matchAll(/Fault\(\s*'(wire\/[a-z-]+)'/g)].map((match) => match[1])),
  );
  expect(thrown).toEqual(new Set(Object.keys(WIRE_CODES)));
});
