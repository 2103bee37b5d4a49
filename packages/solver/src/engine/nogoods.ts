import { growInt32 } from './store.ts';

/** Words before the atoms of a nogood: its size, glue (levels it spanned when learned, 0: from the model), activity slot, name in the proof. */
export const NOGOOD_HEADER = 4;

/**
 * Nogoods ("these atoms are not all true") in one arena. Each of two or more atoms is watched at its first two; a watch list
 * per side holds (reference, bound, blocker side, blocker bound).
 * Invariant: the atom whose negation a nogood has set stays at position 0 while it is a reason.
 */
export class Nogoods {
  arena = new Int32Array(1 << 14);
  top = 1;
  watch: Int32Array<ArrayBuffer>[] = [];
  watchSize = new Int32Array(256);
  learned: number[] = [];
  activity: number[] = [0];
  increment = 1;
  private freeSlots: number[] = [];

  ensureSides(count: number): void {
    while (this.watch.length < count) this.watch.push(new Int32Array(16));
    while (this.watchSize.length < count) this.watchSize = growInt32(this.watchSize);
  }

  /** Append a nogood; atoms 0 and 1 become the watched ones. */
  add(sides: ArrayLike<number>, bounds: ArrayLike<number>, size: number, glue: number): number {
    const reference = this.top;
    this.top += NOGOOD_HEADER + 2 * size;
    while (this.top > this.arena.length) this.arena = growInt32(this.arena);
    this.arena[reference] = size;
    this.arena[reference + 1] = glue;
    this.arena[reference + 2] = 0;
    this.arena[reference + 3] = 0;
    for (let i = 0; i < size; i++) {
      this.arena[reference + NOGOOD_HEADER + 2 * i] = sides[i] as number;
      this.arena[reference + NOGOOD_HEADER + 2 * i + 1] = bounds[i] as number;
    }
    if (glue > 0) {
      const slot = this.freeSlots.pop() ?? this.activity.push(0) - 1;
      this.activity[slot] = this.increment;
      this.arena[reference + 2] = slot;
      this.learned.push(reference);
    }
    this.addWatch(reference, 0, 1);
    this.addWatch(reference, 1, 0);
    return reference;
  }

  private addWatch(reference: number, at: number, other: number): void {
    const a = reference + NOGOOD_HEADER + 2 * at;
    const b = reference + NOGOOD_HEADER + 2 * other;
    this.pushWatch(
      this.arena[a] as number,
      reference,
      this.arena[a + 1] as number,
      this.arena[b] as number,
      this.arena[b + 1] as number,
    );
  }

  pushWatch(side: number, reference: number, bound: number, blockerSide: number, blockerBound: number): void {
    let list = this.watch[side] as Int32Array<ArrayBuffer>;
    const n = this.watchSize[side] as number;
    if (n + 4 > list.length) {
      list = growInt32(list);
      this.watch[side] = list;
    }
    list[n] = reference;
    list[n + 1] = bound;
    list[n + 2] = blockerSide;
    list[n + 3] = blockerBound;
    this.watchSize[side] = n + 4;
  }

  bump(reference: number): void {
    const slot = this.arena[reference + 2] as number;
    if (slot === 0) return;
    const value = ((this.activity[slot] as number) += this.increment);
    if (value > 1e100) {
      for (let i = 0; i < this.activity.length; i++) (this.activity[i] as number) *= 1e-100;
      this.increment *= 1e-100;
    }
  }
  decay(): void {
    this.increment *= 1 / 0.999;
  }

  /**
   * Forget the less active half of the learned nogoods of glue above 2, except those in `locked` (reasons on the trail).
   * Rebuilds arena and watches; returns a map from old to new references for the locked ones.
   */
  reduce(locked: ReadonlySet<number>, onDrop: (proofName: number) => void): Map<number, number> {
    const arena = this.arena;
    const ranked = this.learned
      .filter((r) => (arena[r + 1] as number) > 2 && !locked.has(r))
      .sort(
        (a, b) => (this.activity[arena[a + 2] as number] as number) - (this.activity[arena[b + 2] as number] as number),
      );
    const dropped = new Set(ranked.slice(0, ranked.length >> 1));
    const moved = new Map<number, number>();
    const oldTop = this.top;
    this.watchSize.fill(0);
    this.learned = [];
    let to = 1;
    for (let from = 1; from < oldTop; ) {
      const words = NOGOOD_HEADER + 2 * (arena[from] as number);
      if (dropped.has(from)) {
        this.freeSlots.push(arena[from + 2] as number);
        onDrop(arena[from + 3] as number);
      } else {
        arena.copyWithin(to, from, from + words);
        if (locked.has(from)) moved.set(from, to);
        if ((arena[to + 1] as number) > 0) this.learned.push(to);
        this.addWatch(to, 0, 1);
        this.addWatch(to, 1, 0);
        to += words;
      }
      from += words;
    }
    this.top = to;
    return moved;
  }
}
