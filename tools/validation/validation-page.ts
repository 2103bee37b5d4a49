/** The page of what was compared with outside figures, from the records of a test run. */
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';

export interface AssertionRecord {
  readonly matcher: 'toBeCloseTo' | 'toBeLessThan' | 'toBeLessThanOrEqual';
  readonly actual: number;
  /** The figure expected; for the two last matchers the tolerance. */
  readonly expected: number;
  readonly digits: number | null;
  readonly test: string;
  readonly file: string;
  readonly line: number;
}

interface Comparison {
  readonly area: string;
  readonly check: string;
  readonly keys: readonly string[];
  readonly where: string;
  /** null: the test compares a difference, and its figure stands in the check's own words. */
  readonly expected: number | null;
  readonly ours: number | null;
  readonly offBy: number;
  readonly tolerance: number;
}

const KEY = /\[([A-Z][A-Z0-9.]*(?:-[A-Z0-9]+)*\d*)\]/g;

/** Where `npm run bench:solver:full` writes its rows, with what stands there. */
const ENGINE_ROWS = /<!-- engine: rows -->[\s\S]*<!-- engine: end -->/;

/** @param page the page as it is: the rows of the scheduling engine, which take a day to measure, are kept */
export function validationPage(
  records: readonly AssertionRecord[],
  root: string,
  measured: readonly string[],
  page: string,
): string {
  const sources = new Map<string, readonly string[]>();
  const linesOf = (file: string): readonly string[] => {
    const known = sources.get(file) ?? readFileSync(file, 'utf8').split('\n');
    sources.set(file, known);
    return known;
  };
  const groups = new Map<string, Comparison[]>();
  for (const record of records) {
    const one = comparison(record, linesOf(record.file), root);
    if (one === null) continue;
    const key = `${one.where} ${one.check}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const areas = new Map<string, Comparison[][]>();
  for (const group of groups.values()) {
    const area = group[0]?.area ?? '';
    areas.set(area, [...(areas.get(area) ?? []), group]);
  }
  const count = [...groups.values()].reduce((sum, group) => sum + group.length, 0);
  const parts = [
    '# What was compared with outside figures',
    '',
    'Made by `npx tsx tools/generate-validation.ts --measure` from a run of `tests/reference`. Every row is an assertion of a test: the figure',
    'that a published source gives (its key stands in `docs/sources`), or that a second method in the test gives, beside ours and the',
    'tolerance. Where a test makes several comparisons under one name, the one that comes nearest to its tolerance is shown with their',
    'number. "off by" stands where the test compares a difference; the figure itself is then in the words of the check.',
    '',
    `${count} comparisons in ${groups.size} checks.`,
  ];
  for (const [area, checks] of [...areas].sort(([a], [b]) => (a < b ? -1 : 1))) {
    parts.push(
      '',
      `## ${area}`,
      '',
      '| check | source | expected | ours | tolerance |',
      '| --- | --- | --- | --- | --- |',
    );
    for (const group of checks) parts.push(row(group));
  }
  parts.push(
    '',
    '## The scheduling engine',
    '',
    'Open instances (sources in [sources/solver-benchmarks.md](sources/solver-benchmarks.md)) and generated campaigns, run by',
    '`npm run bench:solver:full`, one core, limit and times in processor seconds after a warm-up. Every solution was checked by',
    '`solver-checker` and held against the published bounds; a row is only written when nothing contradicts.',
    'What the figures mean: [solver-results.md](solver-results.md).',
    '',
    ENGINE_ROWS.exec(page)?.[0] ?? '<!-- engine: rows -->\n\n<!-- engine: end -->',
  );
  return `${parts.join('\n')}\n\n<!-- measured: ${measured.join(' ')} -->\n`;
}

function comparison(record: AssertionRecord, lines: readonly string[], root: string): Comparison | null {
  const source = lines[record.line - 1] ?? '';
  const keys = keysOf(record, lines);
  const isDifference = record.matcher === 'toBeLessThan' || record.matcher === 'toBeLessThanOrEqual';
  // A comparison of two figures: a difference against a tolerance, or a figure against a figure.
  if (isDifference && !/expect\(\s*(Math\.(abs|hypot)|norm)\(/.test(source)) return null;
  const check = record.test.replace(KEY, '').replace(/\s+/g, ' ').trim();
  const base = {
    area: /tests\/reference\/([^/]+)/.exec(record.file)?.[1] ?? '',
    check,
    keys,
    where: `${relative(root, record.file)}:${record.line}`,
  };
  if (isDifference)
    return { ...base, expected: null, ours: null, offBy: Math.abs(record.actual), tolerance: record.expected };
  const offBy = Math.abs(record.actual - record.expected);
  const tolerance = 0.5 * 10 ** -(record.digits ?? 2);
  return { ...base, expected: record.expected, ours: record.actual, offBy, tolerance };
}

/** Keys on the line, then in the test from the comment above it on, then in the names. */
function keysOf({ line, test }: AssertionRecord, lines: readonly string[]): readonly string[] {
  const found = (text: string): readonly string[] => [
    ...new Set([...text.matchAll(KEY)].map((match) => match[1] as string)),
  ];
  const onLine = found(
    `${lines[line - 1] ?? ''} ${lines[line - 2]?.trim().startsWith('//') === true ? lines[line - 2] : ''}`,
  );
  if (onLine.length > 0) return onLine;
  let head = line - 1;
  while (head > 0 && !/^\s*(it|test)(\.each)?\(/.test(lines[head - 1] ?? '')) head--;
  // A comment right above the test speaks of it; what stands above that belongs to another.
  let top = head - 1;
  while (top > 0 && (lines[top - 1] ?? '').trim().startsWith('//')) top--;
  const inTest = found(lines.slice(Math.max(0, top), line).join('\n'));
  if (inTest.length > 0) return inTest.slice(0, 4);
  const inNames = found(test);
  return inNames;
}

function row(group: readonly Comparison[]): string {
  const share = ({ offBy, tolerance }: Comparison): number => (tolerance === 0 ? 0 : offBy / tolerance);
  const worst = group.reduce((a, b) => (share(b) > share(a) ? b : a));
  const several = group.length === 1 ? '' : ` (nearest of ${group.length})`;
  const source = worst.keys.length === 0 ? 'by hand or a second method' : worst.keys.join(', ');
  const expected = worst.expected === null ? 'in the check' : figure(worst.expected);
  const ours = worst.ours === null ? `off by ${figure(worst.offBy)}` : figure(worst.ours);
  return `| ${cell(worst.check)}${several} | ${cell(source)} | ${expected} | ${ours} | ${figure(worst.tolerance)} |`;
}

/** Seven digits show a difference in the last one that a source prints. */
function figure(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  return size >= 1e7 || size < 1e-4 ? value.toExponential(3) : String(Number(value.toPrecision(7)));
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
