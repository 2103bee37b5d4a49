// Makes a fresh clone runnable: checks Node, installs the locked packages when they are missing or out of date.
// Plain Node without dependencies, because it runs before there are any.
import { createHash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const LEAST_NODE = [20, 19];

export function ensureInstalled() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < LEAST_NODE[0] || (major === LEAST_NODE[0] && minor < LEAST_NODE[1])) {
    fail(
      `Handrail needs Node ${LEAST_NODE.join('.')} or newer; this is ${process.version}. Install a newer Node and run the command again.`,
    );
  }
  const lock = readFileSync(join(root, 'package-lock.json'));
  const fingerprint = createHash('sha256').update(lock).update(process.version).digest('hex');
  const stamp = join(root, 'node_modules', '.handrail-installed');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint) return;
  process.stderr.write('Installing the packages that Handrail stands on (first run, or they changed) …\n');
  const result = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (result.status !== 0) {
    fail(
      'Installing failed (see above). Handrail needs the npm registry once; check the network or proxy and run the command again.',
    );
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, fingerprint);
}

function fail(message) {
  process.stderr.write(`${message}\n`);
  process.exit(2);
}
