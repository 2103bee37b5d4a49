/**
 * Packs the `handrail` command into one file that runs outside the checkout: `<folder>/handrail.js` with the page's style sheet
 * and script and the examples beside it.
 *
 *   npx tsx tools/build-cli.ts [folder]      (default apps/cli/dist)
 */
import { chmodSync, cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { packProgram } from './pack-program.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** @returns path of the packed command */
export async function buildCli(folder: string): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, 'handrail.js');
  // Only what is packed here: declarations of the type check stand in the same folder.
  for (const old of ['page', 'examples']) rmSync(join(folder, old), { recursive: true, force: true });
  await packProgram('cli', outfile);
  chmodSync(outfile, 0o755);
  // Without it a folder above could make the file a script of the old kind.
  writeFileSync(join(folder, 'package.json'), `${JSON.stringify({ type: 'module' }, null, 2)}\n`);
  cpSync(join(ROOT, 'apps/cli/src/page'), join(folder, 'page'), { recursive: true });
  cpSync(join(ROOT, 'examples'), join(folder, 'examples'), { recursive: true });
  return outfile;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = resolve(process.argv[2] ?? join(ROOT, 'apps/cli/dist'));
  console.log(`wrote ${await buildCli(folder)}`);
}
