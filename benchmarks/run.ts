/** `npm run bench`: every benchmark but the solver's own (`npm run bench:solver`), one after the other, each in a process of its own. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = import.meta.dirname;
let failed = 0;
for (const subject of readdirSync(folder, { withFileTypes: true })) {
  if (!subject.isDirectory() || subject.name === 'solver') continue;
  for (const file of readdirSync(join(folder, subject.name)).sort()) {
    const path = join(folder, subject.name, file);
    // A file that only gives problems to the others has no line of its own to print.
    if (!file.endsWith('.ts') || !readFileSync(path, 'utf8').includes('console.')) continue;
    console.log(`\n${subject.name}/${file}`);
    const { status } = spawnSync(process.execPath, ['--import', 'tsx', path], { stdio: 'inherit' });
    if (status !== 0) failed++;
  }
}
if (failed > 0) {
  console.error(`${failed} benchmarks gave a wrong answer or failed`);
  process.exitCode = 1;
}
