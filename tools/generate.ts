/** Writes everything that is generated (registries first, pages read them); `--check` writes nothing and fails when one is out of date. */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const scripts = readdirSync(folder)
  .filter((name) => /^generate-.+\.ts$/.test(name))
  .sort((a, b) => Number(b.includes('registries')) - Number(a.includes('registries')) || (a < b ? -1 : 1));
let failed = false;
for (const script of scripts) {
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', join(folder, script), ...process.argv.slice(2)], {
    stdio: 'inherit',
  });
  if (status !== 0) failed = true;
}
process.exitCode = failed ? 1 : 0;
