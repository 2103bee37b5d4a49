/** The app's page, built once for as long as nothing that it is made of changes: .cache/page/<fingerprint>. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const MADE_OF = ['apps/web', 'apps/cli/src/page', 'packages', 'package-lock.json'];

/** @returns the folder of the built page. Several may ask at once: one build is kept. */
export function buildPage(): string {
  const shelf = join(ROOT, '.cache', 'page');
  const built = join(shelf, fingerprint(MADE_OF));
  if (existsSync(join(built, 'index.html'))) return built;
  mkdirSync(shelf, { recursive: true });
  const draft = mkdtempSync(join(shelf, 'draft-'));
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const { status } = spawnSync(
    process.execPath,
    [vite, 'build', '--outDir', draft, '--emptyOutDir', '--logLevel', 'error'],
    // A test run says otherwise, and the page would be built for developers.
    { cwd: join(ROOT, 'apps/web'), stdio: ['ignore', 2, 2], env: { ...process.env, NODE_ENV: 'production' } },
  );
  if (status !== 0) throw new Error('the page could not be built (see above)');
  if (existsSync(built)) rmSync(draft, { recursive: true, force: true });
  else renameSync(draft, built);
  return built;
}

function fingerprint(paths: readonly string[]): string {
  const hash = createHash('sha256');
  const walk = (path: string): void => {
    if (/(^|\/)(node_modules|dist)$/.test(path)) return;
    if (statSync(path).isDirectory()) for (const name of readdirSync(path).sort()) walk(join(path, name));
    else hash.update(path).update(readFileSync(path));
  };
  for (const path of paths) walk(join(ROOT, path));
  return hash.digest('hex').slice(0, 24);
}
