/** A piece of work that one machine has to do without a break, between an earliest start and a latest end. */
export interface Piece {
  readonly release: number;
  readonly deadline: number;
  readonly length: number;
}

/** With so many pieces all orders are looked through; beyond, sums of lengths have to do. */
const MOST_EXACT = 12;

/**
 * Whether one machine cannot do all the pieces, `comesBefore(i, j)` telling that i has to come before j. Exact for a dozen pieces, by the
 * earliest time at which each subset of them can be done; for more, by the room between releases and deadlines, also with each piece
 * in turn taken to be first or not, and last or not.
 */
export function cannotBeDone(pieces: readonly Piece[], comesBefore: (i: number, j: number) => boolean): boolean {
  if (lacksRoom(pieces)) return true;
  if (pieces.length <= MOST_EXACT) return !hasOrder(pieces, comesBefore);
  return pieces.some((piece, i) => {
    const others = pieces.filter((_, j) => j !== i);
    const latestStart = Math.max(...others.map(({ deadline, length }) => deadline - length));
    const earliestEnd = Math.min(...others.map(({ release, length }) => release + length));
    const isLast = others.map((other) => ({
      ...other,
      deadline: Math.min(other.deadline, piece.deadline - piece.length),
    }));
    const isNotLast = pieces.with(i, { ...piece, deadline: Math.min(piece.deadline, latestStart) });
    const isFirst = others.map((other) => ({
      ...other,
      release: Math.max(other.release, piece.release + piece.length),
    }));
    const isNotFirst = pieces.with(i, { ...piece, release: Math.max(piece.release, earliestEnd) });
    return (
      (lacksRoom([...isLast, piece]) && lacksRoom(isNotLast)) ||
      (lacksRoom([...isFirst, piece]) && lacksRoom(isNotFirst))
    );
  });
}

/** Between some release and some deadline there is less room than what has to be done there. */
function lacksRoom(pieces: readonly Piece[]): boolean {
  return pieces.some(({ release }) => {
    const inside = pieces.filter((piece) => piece.release >= release).toSorted((a, b) => a.deadline - b.deadline);
    let end = release;
    return inside.some(({ length, deadline }) => {
      end += length;
      return end > deadline;
    });
  });
}

function hasOrder(pieces: readonly Piece[], comesBefore: (i: number, j: number) => boolean): boolean {
  const n = pieces.length;
  const everything = 2 ** n - 1;
  const earliest = new Float64Array(everything + 1).fill(Number.POSITIVE_INFINITY);
  earliest[0] = Number.NEGATIVE_INFINITY;
  const mustPrecede = pieces.map((_, j) =>
    pieces.reduce((set, __, i) => (comesBefore(i, j) ? set | (1 << i) : set), 0),
  );
  for (let done = 0; done < everything; done++) {
    const now = earliest[done] as number;
    if (now === Number.POSITIVE_INFINITY) continue;
    for (let j = 0; j < n; j++) {
      const missing = (mustPrecede[j] as number) & ~done;
      if ((done & (1 << j)) !== 0 || missing !== 0) continue;
      const { release, deadline, length } = pieces[j] as Piece;
      const end = Math.max(now, release) + length;
      const next = done | (1 << j);
      if (end <= deadline && end < (earliest[next] as number)) earliest[next] = end;
    }
  }
  return (earliest[everything] as number) < Number.POSITIVE_INFINITY;
}
