// `npm start`: install what is missing, plan the demo campaign, print it, write its timeline and page under out/.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureInstalled, root } from './ensure-installed.mjs';

ensureInstalled();
const result = spawnSync(
  process.execPath,
  ['--import', 'tsx', join(root, 'apps/cli/src/main.ts'), 'demo', ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
process.exit(result.status ?? 1);
