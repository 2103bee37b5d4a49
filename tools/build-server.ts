/**
 * Packs the server into one file beside the packed command, with the built page:
 *
 *   npx tsx tools/build-server.ts <folder>      writes <folder>/server/server.js and <folder>/server/page
 *
 * Parts that are compiled for a machine stay outside: the file runs where they can be found, in this checkout for one.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const COMPILED = ['better-sqlite3', '@node-rs/argon2', 'pg-native'];
const BANNER = [
  "import { createRequire as createRequireForBundle } from 'node:module';",
  'const require = createRequireForBundle(import.meta.url);',
].join('\n');

export async function buildServer(folder: string): Promise<void> {
  const place = join(folder, 'server');
  mkdirSync(place, { recursive: true });
  await build({
    entryPoints: [join(ROOT, 'apps/server/src/main.ts')],
    outfile: join(place, 'server.js'),
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    external: COMPILED,
    banner: { js: BANNER },
    legalComments: 'linked',
    logLevel: 'error',
  });
  writeFileSync(join(place, 'package.json'), `${JSON.stringify({ type: 'module' }, null, 2)}\n`);
  buildPage(join(place, 'page'));
}

/** The page is built again only when something that it is made of has changed. */
function buildPage(page: string): void {
  const stamp = join(dirname(page), 'page-made-of');
  const madeOf = fingerprint(['apps/web', 'packages', 'package-lock.json']);
  if (existsSync(join(page, 'index.html')) && existsSync(stamp) && readFileSync(stamp, 'utf8') === madeOf) return;
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const { status } = spawnSync(
    process.execPath,
    [vite, 'build', '--outDir', page, '--emptyOutDir', '--logLevel', 'error'],
    {
      cwd: join(ROOT, 'apps/web'),
      stdio: ['ignore', 2, 2],
      env: { ...process.env, NODE_ENV: 'production' },
    },
  );
  if (status !== 0) throw new Error('the page could not be built (see above)');
  writeFileSync(stamp, madeOf);
}

function fingerprint(paths: readonly string[]): string {
  const hash = createHash('sha256');
  const walk = (path: string): void => {
    if (/(^|\/)(node_modules|dist)$/.test(path)) return;
    if (statSync(path).isDirectory()) for (const name of readdirSync(path).sort()) walk(join(path, name));
    else hash.update(path).update(readFileSync(path));
  };
  for (const path of paths) walk(join(ROOT, path));
  return hash.digest('hex');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildServer(resolve(process.argv[2] ?? join(ROOT, 'apps/cli/dist')));
}
