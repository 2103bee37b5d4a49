/**
 * Writes docs/validation.md: what the reference tests compared with outside figures, and how near it came.
 *
 *   npx tsx tools/generate-validation.ts --measure     runs the reference tests and writes the page
 *   npx tsx tools/generate-validation.ts [--check]     says whether the page speaks of all reference files; measures nothing
 */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type AssertionRecord, validationPage } from './validation/validation-page.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const PAGE = join(ROOT, 'docs', 'validation.md');
/** Areas that compare physical figures. The others assert plans, routes and optima, which are equal or not. */
const AREAS = ['fastener', 'odds', 'prebreathe', 'sky', 'suit', 'thermal'];

/** Compares with our own last output, which says nothing about right. */
const NO_OUTSIDE = new Set(['tests/reference/sky/drift.test.ts']);

const files = AREAS.flatMap((area) => {
  const folder = join(ROOT, 'tests', 'reference', area);
  const names = existsSync(folder) ? readdirSync(folder) : [];
  return names.filter((name) => name.endsWith('.test.ts')).map((name) => `tests/reference/${area}/${name}`);
})
  .filter((file) => !NO_OUTSIDE.has(file))
  .sort();

if (process.argv.includes('--measure')) await measure();
else {
  const page = existsSync(PAGE) ? readFileSync(PAGE, 'utf8') : '';
  const measured = /<!-- measured: (.*) -->/.exec(page)?.[1]?.split(' ') ?? [];
  const missing = files.filter((file) => !measured.includes(file));
  const gone = measured.filter((file) => !files.includes(file));
  if (missing.length > 0 || gone.length > 0) {
    process.stderr.write(
      `docs/validation.md does not speak of ${[...missing, ...gone].join(', ')}: npx tsx tools/generate-validation.ts --measure\n`,
    );
    if (process.argv.includes('--check')) process.exitCode = 1;
  }
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'handrail-validation-'));
  const log = join(folder, 'assertions.jsonl');
  writeFileSync(log, '');
  process.env['HANDRAIL_VALIDATION_FILE'] = log;
  const { startVitest } = await import('vitest/node');
  const run = await startVitest('test', files, {
    root: ROOT,
    watch: false,
    setupFiles: [join(ROOT, 'tools', 'validation', 'record-assertions.ts')],
    reporters: ['dot'],
    // One file after the other, so that the page does not depend on who was first.
    fileParallelism: false,
  });
  await run.close();
  const failed = process.exitCode !== undefined && process.exitCode !== 0;
  const records = readFileSync(log, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as AssertionRecord)
    .sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line));
  rmSync(folder, { recursive: true });
  if (failed) {
    process.stderr.write('reference tests fail, so nothing was written\n');
    return;
  }
  writeFileSync(PAGE, validationPage(records, ROOT, files, existsSync(PAGE) ? readFileSync(PAGE, 'utf8') : ''));
  process.stdout.write(`wrote ${PAGE}\n`);
}
