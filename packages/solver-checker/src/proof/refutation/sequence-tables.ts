import { FORBIDDEN, type Sequence, type SequenceMember } from '@handrail/solver/model/model';
import type { Reading } from '../reading.ts';

/** What the model alone says of the members of a sequence; gaps are member × member, row-major, FORBIDDEN where there is no way. */
export interface SequenceTables {
  /** Whether it is the first naming of its interval. */
  readonly isFirstNaming: readonly boolean[];
  readonly shortest: readonly number[];
  /** Time from the end of one to the start of the other with nothing in between. */
  readonly direct: Int32Array;
  /** Least gap with every member free to come between: never more than in any state of a search. */
  readonly least: Int32Array;
  /** Least sum of steps, with first namings of every interval free to come between and taking no time. */
  readonly leastSteps: Int32Array;
}

/** By sequence constraint; worked out once, since neither steps nor least durations change. */
const tables = new WeakMap<Sequence, SequenceTables>();

export function tablesOf(constraint: Sequence, reading: Reading): SequenceTables {
  const known = tables.get(constraint);
  if (known !== undefined) return known;
  const { members, types, transitions } = constraint;
  const n = members.length;
  const shortest = members.map(({ interval }) => reading.shortest(interval));
  const isFirstNaming = members.map(
    ({ interval }, i) => members.findIndex((other) => other.interval === interval) === i,
  );
  const direct = Int32Array.from({ length: n * n }, (_, at) => {
    const [a, b] = [members[Math.floor(at / n)] as SequenceMember, members[at % n] as SequenceMember];
    return Math.min(FORBIDDEN, transitions[a.endType * types + b.startType] as number);
  });
  const least = leastWays(direct, n, (k) => shortest[k] as number);
  const leastSteps = leastWays(direct, n, (k) => (isFirstNaming[k] ? 0 : FORBIDDEN));
  const made = { isFirstNaming, shortest, direct, least, leastSteps };
  tables.set(constraint, made);
  return made;
}

/** By Floyd and Warshall, a stay at k taking `stay(k)`. */
function leastWays(direct: Int32Array, n: number, stay: (k: number) => number): Int32Array {
  const least = direct.slice();
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const leaves = (least[i * n + k] as number) + stay(k);
      for (let j = 0; j < n; j++) {
        if (j === k || j === i) continue;
        least[i * n + j] = Math.min(FORBIDDEN, least[i * n + j] as number, leaves + (least[k * n + j] as number));
      }
    }
  }
  return least;
}
