/**
 * npm run bench:solver:full -- [--only NAME]… [--every N] [--chuffed]
 *
 * Runs the sets of the open instances and the generated campaigns one after the other, each in a process of its own with times in
 * processor seconds, and writes a row a set into docs/validation.md. A row says how many of the set were run: with `--every 10` each
 * tenth. Rows of sets that are not run stay. Everything takes about a day of one core.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { gapToBestKnown, isClosed } from './judge.ts';
import { type BenchRecord, quantile } from './report.ts';

const PAGE = join(import.meta.dirname, '..', '..', 'docs', 'validation.md');
const BEGIN = '<!-- engine: rows -->';
const END = '<!-- engine: end -->';

interface BenchSet {
  readonly name: string;
  readonly paths: readonly string[];
  readonly timeS: number;
  /** What is shown of the open ones: distance to the best published value, or to the bound that was proved. */
  readonly gapTo: 'best known' | 'bound';
}

const set = (name: string, timeS: number, path: string, gapTo: BenchSet['gapTo'] = 'best known'): BenchSet => ({
  name,
  paths: [path],
  timeS,
  gapTo,
});

const SETS: readonly BenchSet[] = [
  set('RCPSP j30', 60, 'rcpsp/j30'),
  set('RCPSP j60', 60, 'rcpsp/j60'),
  set('RCPSP j120', 30, 'rcpsp/j120'),
  set('RCPSP/max sm-j10', 60, 'rcpsp-max/sm-j10'),
  set('RCPSP/max sm-j20', 60, 'rcpsp-max/sm-j20'),
  set('RCPSP/max ubo10', 60, 'rcpsp-max/ubo10'),
  set('RCPSP/max ubo20', 60, 'rcpsp-max/ubo20'),
  set('multi-mode j10', 60, 'multi-mode/j10'),
  set('multi-skill 1a', 60, 'multi-skill/1a'),
  set('multi-skill 2c', 60, 'multi-skill/2c'),
  set('job shop', 120, 'jobshop'),
  set('orienteering', 60, 'orienteering'),
  set('campaigns of 25, open roles', 60, 'campaigns:25:10', 'bound'),
  set('campaigns of 32, open roles', 60, 'campaigns:32:10', 'bound'),
  set('campaigns of 40, open roles', 60, 'campaigns:40:10', 'bound'),
  set('campaigns of 40, roles named', 60, 'campaigns:40:10:named', 'bound'),
  set('campaigns of 60, open roles', 30, 'campaigns:60:4', 'bound'),
  set('campaigns of 120, open roles', 30, 'campaigns:120:2', 'bound'),
];

type Line = Pick<BenchRecord, 'outcome' | 'chuffed'> &
  Pick<BenchRecord['instance'], 'name' | 'bestKnown' | 'sense'> & { readonly bugs: readonly string[] };

const { values } = parseArgs({
  options: {
    only: { type: 'string', multiple: true, default: [] },
    every: { type: 'string', default: '1' },
    chuffed: { type: 'boolean', default: false },
  },
});
const chosen = SETS.filter(({ name }) => values.only.length === 0 || values.only.some((only) => name.includes(only)));
if (chosen.length === 0) throw new Error(`no such set; there are ${SETS.map(({ name }) => name).join('; ')}`);
for (const one of chosen) {
  const lines = runSet(one);
  const wrong = lines.flatMap(({ name, bugs }) => bugs.map((bug) => `${name}: ${bug}`));
  if (wrong.length > 0) {
    console.error(`${one.name}: ${wrong.join('; ')}; no row written`);
    process.exitCode = 1;
  } else {
    const row = rowOf(one, lines);
    console.log(row);
    writeRow(one, row);
  }
}

function runSet({ paths, timeS }: BenchSet): Line[] {
  const options = ['--time', String(timeS), '--every', values.every, '--cpu', '--json'];
  const { stdout, status } = spawnSync(
    process.execPath,
    [
      '--import',
      'tsx',
      join(import.meta.dirname, 'run.ts'),
      ...paths,
      ...options,
      ...(values.chuffed ? ['--chuffed'] : []),
    ],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1 << 28 },
  );
  const lines = stdout.split('\n').filter((line) => line.startsWith('{'));
  // Broken off half-way is no row: 1 says that something contradicts, which its lines name.
  if (lines.length === 0 || (status !== 0 && status !== 1)) {
    throw new Error(`${paths.join(' ')}: did not run to its end (status ${status})`);
  }
  return lines.map((line) => JSON.parse(line) as Line);
}

function rowOf({ name, timeS, gapTo }: BenchSet, lines: readonly Line[]): string {
  const times = lines.map(({ outcome }) => (isClosed(outcome) ? outcome.ms : Number.POSITIVE_INFINITY));
  const firsts = lines.flatMap(({ outcome }) => outcome.firstMs ?? []);
  const cells = [
    name,
    values.every === '1' ? 'all' : `each ${values.every}th`,
    `${timeS} s`,
    `${lines.filter(({ outcome }) => isClosed(outcome)).length} of ${lines.length}`,
    duration(quantile(times, 0.5)),
    duration(quantile(times, 0.9)),
    duration(Math.max(...lines.map(({ outcome }) => outcome.ms))),
    duration(quantile(firsts, 0.5)),
    gapTo === 'bound' ? levelsOf(lines) : gapOf(lines),
    ...(values.chuffed ? [chuffedOf(lines)] : ['not run']),
  ];
  return `| ${cells.join(' | ')} |`;
}

function gapOf(lines: readonly Line[]): string {
  const gaps = lines.flatMap(({ outcome, bestKnown, sense }) => gapToBestKnown(outcome, bestKnown, sense) ?? []);
  if (gaps.length === 0) return '–';
  return `mean gap to best known ${(100 * (gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length)).toFixed(2)} %`;
}

/** How many of each level are proved, and how far from their bound the others are. */
function levelsOf(lines: readonly Line[]): string {
  const names = lines.find(({ outcome }) => outcome.levels.length > 0)?.outcome.levels ?? [];
  return names
    .map(({ objective }, index) => {
      const levels = lines.flatMap(({ outcome }) => outcome.levels[index] ?? []);
      const open = levels.flatMap(({ value, bound, proved }) =>
        proved || value === null ? [] : Math.abs((value - bound) / (value || 1)),
      );
      const gap = open.length === 0 ? '' : `, others within ${(100 * Math.max(...open)).toFixed(1)} %`;
      return `${objective} ${levels.filter(({ proved }) => proved).length}${gap}`;
    })
    .join('; ');
}

function chuffedOf(lines: readonly Line[]): string {
  const both = lines.flatMap(({ chuffed, outcome }) => (chuffed === null ? [] : [{ chuffed, outcome }]));
  const closed = both.filter(({ chuffed }) => chuffed.isClosed);
  const ratios = closed
    .filter(({ outcome }) => isClosed(outcome))
    .map(({ chuffed, outcome }) => Math.max(chuffed.solveMs, 1) / Math.max(outcome.ms, 0.1));
  const ratio = ratios.length === 0 ? '–' : quantile(ratios, 0.5).toFixed(1);
  return `${closed.length} of ${both.length}; its time over ours, median ${ratio}`;
}

function duration(ms: number): string {
  if (!Number.isFinite(ms)) return '–';
  const [value, unit] = ms < 1000 ? [ms, 'ms'] : [ms / 1000, 's'];
  return `${value < 10 ? value.toFixed(1) : Math.round(value)} ${unit}`;
}

/** Puts the row in the place of the one of the same set, in the order of the sets, and says where and when it was measured. */
function writeRow({ name }: BenchSet, row: string): void {
  const page = readFileSync(PAGE, 'utf8');
  const from = page.indexOf(BEGIN);
  const to = page.indexOf(END);
  if (from < 0 || to < 0) throw new Error(`${PAGE} has no place for the rows of the engine`);
  const rows = new Map(
    page
      .slice(from + BEGIN.length, to)
      .split('\n')
      .filter((line) => SETS.some((one) => line.startsWith(`| ${one.name} |`)))
      .map((line) => [line.split('|')[1]?.trim() ?? '', line] as const),
  );
  const { model } = cpus()[0] ?? { model: 'unknown processor' };
  rows.set(name, `${row.slice(0, -2)} | ${model.trim()}, Node ${process.versions.node.split('.')[0]} |`);
  const table = [
    '',
    '',
    '| set | run | limit | closed | median | 90 % within | longest | first plan, median | levels or gap | Chuffed, same run | where |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...SETS.flatMap((one) => rows.get(one.name) ?? []),
    '',
    '',
  ].join('\n');
  writeFileSync(PAGE, `${page.slice(0, from + BEGIN.length)}${table}${page.slice(to)}`);
}
