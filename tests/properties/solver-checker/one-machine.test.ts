/** Can one machine do all the pieces? The three ways of telling, against trying every order. */
import { type Piece, cannotBeDone } from '@handrail/solver-checker/proof/refutation/one-machine';
import { expect, it } from 'vitest';

function tryEveryOrder(pieces: readonly Piece[], at = Number.NEGATIVE_INFINITY): boolean {
  if (pieces.length === 0) return true;
  return pieces.some((piece, i) => {
    const end = Math.max(at, piece.release) + piece.length;
    return end <= piece.deadline && tryEveryOrder(pieces.toSpliced(i, 1), end);
  });
}

function picker(seed: number): (n: number) => number {
  let state = (seed * 2654435761) | 1;
  return (n) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % n;
  };
}

it('up to six pieces, exactly when no order of them does', () => {
  let impossible = 0;
  for (let seed = 1; seed <= 2000; seed++) {
    const pick = picker(seed);
    const pieces = Array.from({ length: 2 + pick(5) }, () => {
      const [release, length] = [pick(10), 1 + pick(5)];
      return { release, length, deadline: release + length + pick(12) };
    });
    const truth = !tryEveryOrder(pieces);
    if (truth) impossible += 1;
    expect({ seed, verdict: cannotBeDone(pieces, () => false) }).toEqual({ seed, verdict: truth });
  }
  expect(impossible).toBeGreaterThan(200);
});

it('many pieces: never, where they are laid out one after the other to begin with', () => {
  for (let seed = 1; seed <= 300; seed++) {
    const pick = picker(seed);
    let at = 0;
    const pieces = Array.from({ length: 13 + pick(8) }, () => {
      const [start, length] = [at + pick(2), 1 + pick(5)];
      at = start + length;
      return { release: start - pick(9), length, deadline: at + pick(9) };
    });
    expect({ seed, verdict: cannotBeDone(pieces, () => false) }).toEqual({ seed, verdict: false });
  }
});
