// `npm start`: install what is missing, plan the demo campaign, print it, write its timeline and page under out/.
// The program is packed first: packed, the proofs are checked in half the time.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureInstalled, root } from './ensure-installed.mjs';

ensureInstalled();
const folder = join(root, '.cache', 'handrail');
run(['--import', 'tsx', join(root, 'tools/build-cli.ts'), folder], ['ignore', 'ignore', 'inherit']);
run([join(folder, 'handrail.js'), 'demo', 'examples/fulmar.kdl', ...process.argv.slice(2)], 'inherit');

function run(args, stdio) {
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio });
  if (status !== 0) process.exit(status ?? 1);
}
