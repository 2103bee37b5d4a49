/**
 * Packs the server into one file beside the packed command, with the built page:
 *
 *   npx tsx tools/build-server.ts <folder>      writes <folder>/server/server.js and <folder>/server/page
 */
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildPage } from './build-page.ts';
import { packProgram } from './pack-program.ts';

export async function buildServer(folder: string): Promise<void> {
  const place = join(folder, 'server');
  mkdirSync(place, { recursive: true });
  await packProgram('server', join(place, 'server.js'));
  writeFileSync(join(place, 'package.json'), `${JSON.stringify({ type: 'module' }, null, 2)}\n`);
  const page = join(place, 'page');
  rmSync(page, { recursive: true, force: true });
  cpSync(buildPage(), page, { recursive: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildServer(resolve(process.argv[2] ?? join(import.meta.dirname, '..', 'apps/cli/dist')));
}
