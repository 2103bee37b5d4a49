import { type Explanation, LEARNED } from './explanation.ts';
import { REASON_NOGOOD, type Store, growInt32 } from './store.ts';

/** Words before the atoms of a nogood: its size, glue (levels it spanned when learned, 0: from the model), activity slot, name in the proof. */
export const NOGOOD_HEADER = 4;

/** Watch lists that a side may have: the wider its range, the more bounds share one. */
const MOST_BUCKETS = 64;
const NO_WATCHES = new Int32Array(0);

/**
 * Nogoods ("these atoms are not all true") in one arena. Each of two or more atoms is watched at its first two; the watch lists,
 * several a side, each for a stretch of bounds, hold (reference, bound, blocker side, blocker bound). A side that rises visits
 * those of the bounds that it passes.
 * Invariant: the atom whose negation a nogood has set stays at position 0 while it is a reason.
 */
export class Nogoods {
  arena = new Int32Array(1 << 14);
  top = 1;
  private readonly watch: Int32Array<ArrayBuffer>[] = [];
  private watchSize = new Int32Array(256);
  // Per side: the bound below its lists, how many bounds share a list (a power of two), the first list, and the last.
  private low = new Int32Array(256);
  private shift = new Int32Array(256);
  private firstBucket = new Int32Array(256);
  private lastBucket = new Int32Array(256);
  learned: number[] = [];
  activity: number[] = [0];
  increment = 1;
  /** The nogood that failed last, 0: none since this was set back. */
  failed = 0;
  /** The constraint that a nogood of the model came from, by reference; absent for learned ones. */
  constraintOf = new Map<number, number>();
  private freeSlots: number[] = [];

  /** Lists for a side whose bounds lie from `min` to `max`. Sides are opened in their order. */
  openSide(side: number, min: number, max: number): void {
    if (side >= this.low.length) {
      this.low = growInt32(this.low);
      this.shift = growInt32(this.shift);
      this.firstBucket = growInt32(this.firstBucket);
      this.lastBucket = growInt32(this.lastBucket);
    }
    const range = Math.max(0, max - min);
    let shift = 0;
    while (range >> shift >= MOST_BUCKETS) shift++;
    this.low[side] = min;
    this.shift[side] = shift;
    this.firstBucket[side] = this.watch.length;
    for (let i = 0; i <= range >> shift; i++) this.watch.push(NO_WATCHES);
    this.lastBucket[side] = this.watch.length - 1;
    while (this.watchSize.length < this.watch.length) this.watchSize = growInt32(this.watchSize);
  }

  private bucketOf(side: number, bound: number): number {
    const first = this.firstBucket[side] as number;
    const above = bound - (this.low[side] as number);
    if (above <= 0) return first;
    const bucket = first + (above >> (this.shift[side] as number));
    const last = this.lastBucket[side] as number;
    return bucket < last ? bucket : last;
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

  private pushWatch(side: number, reference: number, bound: number, blockerSide: number, blockerBound: number): void {
    const bucket = this.bucketOf(side, bound);
    let list = this.watch[bucket] as Int32Array<ArrayBuffer>;
    const n = this.watchSize[bucket] as number;
    if (n + 4 > list.length) {
      list = n === 0 ? new Int32Array(16) : growInt32(list);
      this.watch[bucket] = list;
    }
    list[n] = reference;
    list[n + 1] = bound;
    list[n + 2] = blockerSide;
    list[n + 3] = blockerBound;
    this.watchSize[bucket] = n + 4;
  }

  /** Follow up a side that has risen from `old` to `bound`. False: conflict. */
  visit(store: Store, side: number, old: number, bound: number): boolean {
    const last = this.bucketOf(side, bound);
    for (let bucket = this.bucketOf(side, old + 1); bucket <= last; bucket++) {
      if ((this.watchSize[bucket] as number) > 0 && !this.visitBucket(store, bucket, side, old, bound)) return false;
    }
    return true;
  }

  private visitBucket(store: Store, bucket: number, side: number, old: number, bound: number): boolean {
    const lb = store.lb;
    const arena = this.arena;
    const list = this.watch[bucket] as Int32Array<ArrayBuffer>;
    const size = this.watchSize[bucket] as number;
    let keep = 0;
    let i = 0;
    let ok = true;
    for (; i < size; i += 4) {
      const k = list[i + 1] as number;
      const blockerSide = list[i + 2] as number;
      const blockerBound = list[i + 3] as number;
      // An atom whose negation holds as well belongs to an interval on its way to absence: nothing follows from it.
      if (
        k > bound ||
        k <= old ||
        (lb[blockerSide ^ 1] as number) >= 1 - blockerBound ||
        -bound < (lb[side ^ 1] as number)
      ) {
        if (keep !== i) {
          list[keep] = list[i] as number;
          list[keep + 1] = k;
          list[keep + 2] = blockerSide;
          list[keep + 3] = blockerBound;
        }
        keep += 4;
        continue;
      }
      const reference = list[i] as number;
      const a = reference + NOGOOD_HEADER;
      // Bring the fired atom to position 1.
      if (arena[a] === side && arena[a + 1] === k) {
        arena[a] = arena[a + 2] as number;
        arena[a + 1] = arena[a + 3] as number;
        arena[a + 2] = side;
        arena[a + 3] = k;
      }
      const s0 = arena[a] as number;
      const k0 = arena[a + 1] as number;
      if ((lb[s0 ^ 1] as number) >= 1 - k0) {
        list[keep] = reference;
        list[keep + 1] = k;
        list[keep + 2] = s0;
        list[keep + 3] = k0;
        keep += 4;
        continue;
      }
      const end = a + 2 * (arena[reference] as number);
      let found = 0;
      for (let x = a + 4; x < end; x += 2) {
        if ((lb[arena[x] as number] as number) < (arena[x + 1] as number)) {
          found = x;
          break;
        }
      }
      if (found !== 0) {
        const s = arena[found] as number;
        const b = arena[found + 1] as number;
        arena[a + 2] = s;
        arena[a + 3] = b;
        arena[found] = side;
        arena[found + 1] = k;
        this.pushWatch(s, reference, b, s0, k0);
        continue;
      }
      list[keep] = reference;
      list[keep + 1] = k;
      list[keep + 2] = s0;
      list[keep + 3] = k0;
      keep += 4;
      if ((lb[s0] as number) >= k0) {
        this.fail(store, reference);
        ok = false;
      } else if (!store.set(s0 ^ 1, 1 - k0, (reference << 2) | REASON_NOGOOD)) {
        ok = false;
      }
      if (!ok) {
        i += 4;
        break;
      }
    }
    for (; i < size; i++) list[keep++] = list[i] as number;
    this.watchSize[bucket] = keep;
    return ok;
  }

  /** A nogood of which every atom holds, as the store's conflict. */
  fail(store: Store, reference: number): void {
    const arena = this.arena;
    this.failed = reference;
    store.beginConflict(this.constraintOf.get(reference) ?? LEARNED, 'clause');
    const n = arena[reference] as number;
    for (let i = 0; i < n; i++) {
      const a = reference + NOGOOD_HEADER + 2 * i;
      store.conflictAtom(arena[a] as number, arena[a + 1] as number);
    }
  }

  /** Why a nogood has negated its first atom: the others. */
  explain(reference: number, out: Explanation): void {
    const arena = this.arena;
    out.nogood = reference;
    out.constraint = this.constraintOf.get(reference) ?? LEARNED;
    out.label = 'clause';
    const end = reference + NOGOOD_HEADER + 2 * (arena[reference] as number);
    for (let a = reference + NOGOOD_HEADER + 2; a < end; a += 2) out.add(arena[a] as number, arena[a + 1] as number);
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
    const constraints = new Map<number, number>();
    for (const [reference, constraint] of this.constraintOf)
      constraints.set(moved.get(reference) as number, constraint);
    this.constraintOf = constraints;
    return moved;
  }
}
