/** What a browser must fetch before anything is seen: at most 350 kB packed, so that it opens on a poor line. The limit is the project's own. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { buildPage } from '../../../tools/build-page.ts';

const LIMIT_BYTES = 350_000;

interface Chunk {
  readonly file: string;
  readonly css?: readonly string[];
  readonly imports?: readonly string[];
}

test('page, first scripts, styles and fonts are within the limit; editor, 3-D and spreadsheets are not among them', () => {
  const folder = buildPage();
  const manifest = JSON.parse(readFileSync(join(folder, '.vite', 'manifest.json'), 'utf8')) as Record<string, Chunk>;
  const first = new Set(['index.html']);
  const walk = (name: string): void => {
    const chunk = manifest[name];
    if (chunk === undefined || first.has(chunk.file)) return;
    first.add(chunk.file);
    for (const style of chunk.css ?? []) {
      first.add(style);
      // Fonts of the first screen: the Latin ones that its style sheet names, two weights.
      for (const [font] of readFileSync(join(folder, style), 'utf8').matchAll(
        /ibm-plex-sans-latin-[46]00-normal-[\w-]+\.woff2/g,
      ))
        first.add(`assets/${font}`);
    }
    for (const name of chunk.imports ?? []) walk(name);
  };
  walk('index.html');
  const packed = [...first].map((name) => {
    const bytes = readFileSync(join(folder, name));
    return name.endsWith('.woff2') ? bytes.length : gzipSync(bytes).length;
  });
  const total = packed.reduce((sum, bytes) => sum + bytes, 0);
  expect(total).toBeGreaterThan(100_000);
  expect(total).toBeLessThanOrEqual(LIMIT_BYTES);
  const words = [...first]
    .filter((name) => name.endsWith('.js'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  for (const heavy of ['cm-content', 'WebGLRenderer', 'sharedStrings.xml'])
    expect(
      words.some((text) => text.includes(heavy)),
      heavy,
    ).toBe(false);
});
