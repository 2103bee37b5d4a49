import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Published bounds of an instance in the sense of its file: cost to minimise, or score to maximise. */
export interface BestKnown {
  readonly lower: number;
  readonly upper: number;
  readonly infeasible: boolean;
  /** The name stands for two instances with different values, so that no gap can be told. */
  readonly isAmbiguous: boolean;
}

/**
 * `best-known.csv` beside the instances: name, then a value, a range `a..b`, a lower and an upper bound, or `unsat`. A name that stands
 * there twice with different values (two sources, one file name) gives the range of them.
 */
export function readBestKnown(folder: string): Map<string, BestKnown> {
  const known = new Map<string, BestKnown>();
  const file = join(folder, 'best-known.csv');
  if (!existsSync(file)) return known;
  const [header, ...rows] = readFileSync(file, 'utf8')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(','));
  const lowerColumn = header?.indexOf('lb') ?? -1;
  for (const row of rows) {
    const name = instanceName(row[0] ?? '');
    if (row[1] === 'unsat') {
      known.set(name, { lower: 0, upper: 0, infeasible: true, isAmbiguous: false });
      continue;
    }
    const [from, to = from] = (row[1] ?? '').split('..');
    const lower = Number(lowerColumn < 0 ? from : row[lowerColumn]);
    const upper = Number(lowerColumn < 0 ? to : row[lowerColumn + 1]);
    if (Number.isNaN(lower) || Number.isNaN(upper)) throw new Error(`no bounds in ${file}: ${row.join(',')}`);
    const other = known.get(name);
    known.set(name, {
      lower: Math.min(lower, other?.lower ?? lower),
      upper: Math.max(upper, other?.upper ?? upper),
      infeasible: false,
      isAmbiguous: other !== undefined && (other.isAmbiguous || other.lower !== lower || other.upper !== upper),
    });
  }
  return known;
}

/** File name without folder and ending, in lower case: what instance files and tables of bounds have in common. */
export function instanceName(path: string): string {
  return (path.split(/[/\\]/).at(-1) ?? path).toLowerCase().replace(/\.(sm|mm|sch|jss|dzn|txt)$/, '');
}
