// `npm test`: install what is missing, run every check and every test, end with "N passed, N failed".
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, root } from './ensure-installed.mjs';

ensureInstalled();
ensureDebian();

let passed = 0;
let failed = 0;

const bin = (name) => join(root, 'node_modules', '.bin', name);
const CHECKS = [
  ['types', bin('tsc'), ['-b']],
  ['lint', bin('oxlint'), ['--type-aware', '--quiet']],
  ['format', bin('biome'), ['format']],
  [
    'import directions',
    process.execPath,
    [
      '--import',
      join(root, 'tools/swc-reads-tsx.mjs'),
      bin('depcruise'),
      '--config',
      '.dependency-cruiser.cjs',
      'packages',
      'apps',
      'benchmarks',
      'tests',
    ],
  ],
  ['generated files are current', process.execPath, ['--import', 'tsx', join(root, 'tools/generate.ts'), '--check']],
];

for (const [name, command, args] of CHECKS) {
  process.stdout.write(`check: ${String(name)}\n`);
  const result = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (result.status === 0) passed += 1;
  else {
    failed += 1;
    process.stdout.write(`${result.stdout ?? ''}${result.stderr ?? ''}\nFAILED check: ${String(name)}\n`);
  }
}

const reportFile = join(root, '.cache', 'test-report.json');
mkdirSync(join(root, '.cache'), { recursive: true });
rmSync(reportFile, { force: true });
spawnSync(
  bin('vitest'),
  ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`, ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
if (existsSync(reportFile)) {
  const report = JSON.parse(readFileSync(reportFile, 'utf8'));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  // A file that fails to load has no tests of its own to fail.
  const broken = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  failed += broken.length;
  for (const file of broken) process.stdout.write(`could not run: ${file.name}\n`);
} else {
  failed += 1;
  process.stdout.write('the test runner wrote no report\n');
}
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exit(failed === 0 ? 0 : 1);

/** Pages are tested in a real browser, the store on a real PostgreSQL. On Debian both are installed; elsewhere say what is wanted. */
function ensureDebian() {
  const wanted = [
    ...(existsSync('/usr/bin/chromium') || process.env.HANDRAIL_CHROMIUM ? [] : ['chromium', 'fonts-dejavu']),
    ...(spawnSync('pdftotext', ['-v'], { stdio: 'ignore' }).error === undefined ? [] : ['poppler-utils']),
    ...(existsSync('/usr/lib/postgresql') || process.env.DATABASE_URL ? [] : ['postgresql']),
  ];
  if (wanted.length === 0) return;
  const apt = spawnSync('apt-get', ['--version'], { stdio: 'ignore' });
  const isRoot = typeof process.getuid === 'function' && process.getuid() === 0;
  if (apt.status === 0 && isRoot) {
    process.stderr.write(`Installing Debian packages for the tests (${wanted.join(', ')}) …\n`);
    spawnSync('apt-get', ['update', '-qq'], { stdio: ['ignore', 2, 2] });
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const result = spawnSync('apt-get', ['install', '-y', '-qq', ...wanted], { stdio: ['ignore', 2, 2], env });
    if (result.status === 0) return;
  }
  process.stderr.write(
    `The tests need ${wanted.join(', ')}: install them, or set HANDRAIL_CHROMIUM to the browser and DATABASE_URL to a PostgreSQL.\n`,
  );
}
