/**
 * Which lines changed between two texts. Method: common beginning and end are cut off; between them the greedy shortest edit
 * script. Beyond a bound on its length the rest is given as taken out and put in, which is true if not shortest.
 * @source E. W. Myers, "An O(ND) Difference Algorithm and Its Variations", Algorithmica 1 (1986), 251–266
 */
import type { Comparison } from '@handrail/wire/api/api-types';

type LineChange = Comparison['lines'][number];
/** Longest edit script that is searched for, in lines: memory grows with its square. */
const MOST_EDITS = 1500;

export function lineChanges(before: string, after: string): LineChange[] {
  const old = before.split('\n');
  const now = after.split('\n');
  let head = 0;
  while (head < old.length && head < now.length && old[head] === now[head]) head += 1;
  let tail = 0;
  const shorter = Math.min(old.length, now.length) - head;
  while (tail < shorter && old[old.length - 1 - tail] === now[now.length - 1 - tail]) tail += 1;
  const from = old.slice(head, old.length - tail);
  const to = now.slice(head, now.length - tail);
  return (shortestScript(from, to) ?? allAnew(from, to)).map(({ at, isTaken }) =>
    isTaken
      ? { before: head + at + 1, after: null, words: from[at] ?? '' }
      : { before: null, after: head + at + 1, words: to[at] ?? '' },
  );
}

interface Edit {
  readonly at: number;
  readonly isTaken: boolean;
}

function allAnew(from: readonly string[], to: readonly string[]): Edit[] {
  return [...from.map((_, at) => ({ at, isTaken: true })), ...to.map((_, at) => ({ at, isTaken: false }))];
}

/** null: longer than the bound. */
function shortestScript(from: readonly string[], to: readonly string[]): Edit[] | null {
  const most = Math.min(from.length + to.length, MOST_EDITS);
  /** Furthest line of `from` on each diagonal (its line less that of `to`), by number of edits. */
  const rounds: Int32Array[] = [];
  let furthest = new Int32Array(2 * most + 3);
  const middle = most + 1;
  for (let edits = 0; edits <= most; edits += 1) {
    rounds.push(furthest.slice(middle - edits - 1, middle + edits + 2));
    for (let diagonal = -edits; diagonal <= edits; diagonal += 2) {
      const below = furthest[middle + diagonal + 1] ?? 0;
      const left = furthest[middle + diagonal - 1] ?? 0;
      const isDown = diagonal === -edits || (diagonal !== edits && left < below);
      let x = isDown ? below : left + 1;
      let y = x - diagonal;
      while (x < from.length && y < to.length && from[x] === to[y]) {
        x += 1;
        y += 1;
      }
      furthest[middle + diagonal] = x;
      if (x >= from.length && y >= to.length) return wayBack(rounds, from.length, to.length);
    }
    furthest = furthest.slice();
  }
  return null;
}

function wayBack(rounds: readonly Int32Array[], lastX: number, lastY: number): Edit[] {
  const edits: Edit[] = [];
  let x = lastX;
  let y = lastY;
  for (let round = rounds.length - 1; round > 0; round -= 1) {
    const was = rounds[round] ?? new Int32Array();
    // The slice of a round begins one diagonal beyond the lowest that it can reach.
    const at = (diagonal: number): number => was[diagonal + round + 1] ?? 0;
    const diagonal = x - y;
    const isDown = diagonal === -round || (diagonal !== round && at(diagonal - 1) < at(diagonal + 1));
    const cameX = isDown ? at(diagonal + 1) : at(diagonal - 1);
    const cameY = cameX - (isDown ? diagonal + 1 : diagonal - 1);
    edits.push(isDown ? { at: cameY, isTaken: false } : { at: cameX, isTaken: true });
    x = cameX;
    y = cameY;
  }
  return edits.reverse();
}
