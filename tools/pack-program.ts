/** How a program of apps/ becomes one file: for people, and for the tests that run it as people do. */
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
/** Parts that are compiled for a machine stay outside: the file runs where they can be found, in this checkout for one. */
const COMPILED = ['better-sqlite3', '@node-rs/argon2', 'pg-native'];
/** Some packages still ask for Node modules in the old way; an ES module has to be given the means. */
const MEANS = [
  "import { createRequire as createRequireForBundle } from 'node:module';",
  'const require = createRequireForBundle(import.meta.url);',
];

/** @param app folder of apps/ whose src/main.ts it is */
export async function packProgram(app: 'cli' | 'server', outfile: string): Promise<void> {
  await build({
    entryPoints: [join(ROOT, 'apps', app, 'src/main.ts')],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    external: COMPILED,
    banner: { js: [...(app === 'cli' ? ['#!/usr/bin/env node'] : []), ...MEANS].join('\n') },
    legalComments: 'linked',
    logLevel: 'error',
  });
}
