/**
 * Writes docs/reference/kinds.md from the standard kinds library and the task templates. `--check` writes nothing and fails
 * when the page is out of date.
 *
 *   npx tsx tools/generate-kinds-page.ts [--check]
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { standardLibrary } from '../packages/eva/src/kinds/kinds-library.ts';
import { kindsPage } from '../packages/eva/src/kinds/kinds-page.ts';
import { templates } from '../packages/eva/src/kinds/templates.generated.ts';

const PAGE = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'reference', 'kinds.md');

const text = kindsPage(standardLibrary, templates);
if (process.argv.includes('--check')) {
  let now = '';
  try {
    now = readFileSync(PAGE, 'utf8');
  } catch {
    // A page that is not there is out of date.
  }
  if (now !== text) {
    console.error(`${PAGE} is out of date: run npx tsx tools/generate-kinds-page.ts`);
    process.exitCode = 1;
  }
} else {
  mkdirSync(dirname(PAGE), { recursive: true });
  writeFileSync(PAGE, text);
}
