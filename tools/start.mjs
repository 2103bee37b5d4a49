// `npm start`: install what is missing, plan the demo campaign, print it, write its timeline and page under out/; then open a copy of
// it in the planning app at a local address, until Ctrl-C. `npm start -- --no-serve` ends after the demo.
// The programs are packed first: packed, the proofs are checked in half the time.
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root } from './ensure-installed.mjs';

ensureInstalled();
const isServed = !process.argv.includes('--no-serve');
const args = process.argv.slice(2).filter((word) => word !== '--no-serve');
const folder = join(root, '.cache', 'handrail');
run(['--import', 'tsx', join(root, 'tools/build-cli.ts'), folder], ['ignore', 'ignore', 'inherit']);
run([join(folder, 'handrail.js'), 'demo', 'examples/fulmar.kdl', ...args], 'inherit');
if (isServed) {
  process.stdout.write('\nBuilding the planning app …\n');
  run(['--import', 'tsx', join(root, 'tools/build-server.ts'), folder], ['ignore', 'ignore', 'inherit']);
  // A copy, so that trying things out leaves the example as it is; what was tried before is kept.
  const open = join(root, 'out', 'open');
  mkdirSync(open, { recursive: true });
  if (!existsSync(join(open, 'fulmar.kdl'))) {
    copyFileSync(join(root, 'examples', 'fulmar.kdl'), join(open, 'fulmar.kdl'));
    copyFileSync(join(root, 'out', 'fulmar.timeline.json'), join(open, 'fulmar.timeline.json'));
  }
  run([join(folder, 'handrail.js'), 'open', join(open, 'fulmar.kdl')], 'inherit');
}

function run(command, stdio) {
  const { status } = spawnSync(process.execPath, command, { cwd: root, stdio });
  if (status !== 0) process.exit(status ?? 1);
}
