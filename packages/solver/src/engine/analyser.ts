import type { ProofLog } from '../proof/proof-log.ts';
import type { ActivityHeap } from '../search/activity-heap.ts';
import { Explanation } from './explanation.ts';
import type { Kernel } from './kernel.ts';
import { REASON_DECISION, REASON_NOGOOD, growInt32 } from './store.ts';

const NONE = -(2 ** 31);
const MINIMISE_DEPTH = 4;

/**
 * From a conflict to a learned nogood with one atom of the newest level (first unique implication point). Two atoms of one
 * side merge to the stronger; a reason is asked for the bound that is needed, not for the one that was reached, so that it
 * may answer with weaker atoms.
 */
export class Analyser {
  /** The learned nogood: atom 0 is the one to negate, atom 1 one of the highest other level. */
  size = 0;
  side: number[] = [];
  bound: number[] = [];
  glue = 0;
  backjump = 0;
  proofName = 0;

  private readonly kernel: Kernel;
  private readonly activity: ActivityHeap;
  private readonly need: Int32Array;
  private readonly entry: Int32Array;
  private readonly touched: number[] = [];
  /** Sides seen in the present pass carry its number. */
  private readonly mark: Int32Array;
  private marked = 0;
  private pending = 0;
  /** By trail index: the pass in which the entry was found redundant, and for which bound. */
  private redundantIn = new Int32Array(1024);
  private redundantFor = new Int32Array(1024);
  private readonly out = new Explanation();
  private readonly nested = Array.from({ length: MINIMISE_DEPTH + 1 }, () => new Explanation());
  proof: ProofLog | null = null;

  /** Test mode: refuse reasons with atoms that did not hold yet. */
  isChecking = false;
  isMinimising = true;
  private readonly stepBack: (level: number) => void;

  /** `stepBack` undoes newer levels when a conflict turns out to rest on older ones alone. */
  constructor(kernel: Kernel, activity: ActivityHeap, stepBack: (level: number) => void) {
    this.stepBack = stepBack;
    this.kernel = kernel;
    this.activity = activity;
    this.need = new Int32Array(2 * kernel.store.variableCount).fill(NONE);
    this.entry = new Int32Array(2 * kernel.store.variableCount);
    this.mark = new Int32Array(2 * kernel.store.variableCount);
  }

  /** A level of many decisions at once, below which nothing is learned; 0: none. */
  batchLevel = 0;

  /**
   * `refuted`: the conflict follows from level 0 alone, so the model (with its level-0 bounds) has no solution. `exhausted`: it
   * follows from the batch of decisions.
   */
  analyse(): 'learned' | 'refuted' | 'exhausted' {
    const { kernel } = this;
    const store = kernel.store;
    const highest = this.conflictLevel();
    if (highest === 0) {
      this.proof?.root(kernel);
      this.proof?.conflict(kernel);
      this.proof?.nogood([], []);
      return 'refuted';
    }
    if (highest <= this.batchLevel) return 'exhausted';
    this.proof?.conflict(kernel);
    if (highest < store.level) this.stepBack(highest);
    this.touched.length = 0;
    this.pending = 0;
    if (kernel.nogoods.failed !== 0) kernel.nogoods.bump(kernel.nogoods.failed);
    for (let i = 0; i < store.conflictSize; i++) {
      this.add(store.conflictSide[i] as number, store.conflictBound[i] as number);
    }
    let t = store.trailLength - 1;
    let side = 0;
    for (; ; t--) {
      side = store.trailSide[t] as number;
      if (this.need[side] === NONE || this.entry[side] !== t) continue;
      const bound = this.need[side] as number;
      if (this.pending === 1 && !this.isCrossed(side, bound)) break;
      this.need[side] = NONE;
      this.pending--;
      this.activity.bump(side >> 1);
      const reason = store.trailReason[t] as number;
      if ((reason & 3) === REASON_NOGOOD) kernel.nogoods.bump(reason >> 2);
      kernel.explain(t, side, bound, this.out);
      if (this.isChecking) this.checkReason(this.out, t, side, bound);
      this.proof?.inference(this.out, side, bound);
      for (let i = 0; i < this.out.size; i++) this.add(this.out.side[i] as number, this.out.bound[i] as number);
      if (this.pending === 0) {
        const level = this.newestLevel();
        if (level === 0) {
          this.proof?.nogood([], []);
          return 'refuted';
        }
        if (level <= this.batchLevel) {
          for (const touched of this.touched) this.need[touched] = NONE;
          return 'exhausted';
        }
        this.descend(level);
        t = store.trailLength;
      }
    }
    this.collect(side);
    return 'learned';
  }

  private checkReason(out: Explanation, t: number, side: number, bound: number): void {
    const store = this.kernel.store;
    for (let i = 0; i < out.size; i++) {
      const s = out.side[i] as number;
      const k = out.bound[i] as number;
      if (store.boundBefore(s, t) >= k) continue;
      throw new Error(
        `${out.label} of constraint ${out.constraint}: (${s}, ${k}) did not hold before (${side}, ${bound})`,
      );
    }
  }

  /** Whether the negation of the atom is among the premises too, so that learning it would say nothing. */
  private isCrossed(side: number, bound: number): boolean {
    return (this.need[side ^ 1] as number) >= 1 - bound || (this.kernel.store.base[side ^ 1] as number) >= 1 - bound;
  }

  private newestLevel(): number {
    const store = this.kernel.store;
    let newest = 0;
    for (const side of this.touched) {
      if (this.need[side] !== NONE) newest = Math.max(newest, store.trailLevel[this.entry[side] as number] as number);
    }
    return newest;
  }

  /** No premise of the present level is left: go on at the newest level that has one. */
  private descend(level: number): void {
    const store = this.kernel.store;
    this.stepBack(level);
    this.marked++;
    this.pending = 0;
    for (const side of this.touched) {
      if (this.need[side] === NONE || this.mark[side] === this.marked) continue;
      this.mark[side] = this.marked;
      if (store.trailLevel[this.entry[side] as number] === level) this.pending++;
    }
  }

  /** Trail indices of the decisions that an atom, true now, rests on. */
  decisionsBehind(side: number, bound: number): number[] {
    const store = this.kernel.store;
    const found: number[] = [];
    this.touched.length = 0;
    this.add(side, bound);
    for (let t = store.trailLength - 1; t >= 0; t--) {
      const s = store.trailSide[t] as number;
      if (this.need[s] === NONE || this.entry[s] !== t) continue;
      const k = this.need[s] as number;
      this.need[s] = NONE;
      if (store.trailReason[t] === REASON_DECISION) {
        found.push(t);
        continue;
      }
      this.kernel.explain(t, s, k, this.out);
      this.proof?.inference(this.out, s, k);
      for (let i = 0; i < this.out.size; i++) this.add(this.out.side[i] as number, this.out.bound[i] as number);
    }
    for (const s of this.touched) this.need[s] = NONE;
    return found;
  }

  /** The newest level among the atoms of the conflict. */
  conflictLevel(): number {
    const store = this.kernel.store;
    let highest = 0;
    for (let i = 0; i < store.conflictSize; i++) {
      const t = store.indexOf(store.conflictSide[i] as number, store.conflictBound[i] as number);
      if (t >= 0) highest = Math.max(highest, store.trailLevel[t] as number);
    }
    return highest;
  }

  private add(side: number, bound: number): void {
    const store = this.kernel.store;
    if ((store.base[side] as number) >= bound) return;
    const known = this.need[side] as number;
    if (bound <= known) return;
    const t = store.indexOf(side, bound);
    const isNow = store.trailLevel[t] === store.level;
    if (known === NONE) {
      this.touched.push(side);
      if (isNow) this.pending++;
    } else if (isNow && (store.trailLevel[this.entry[side] as number] as number) < store.level) {
      this.pending++;
    }
    this.need[side] = bound;
    this.entry[side] = t;
  }

  private collect(first: number): void {
    const store = this.kernel.store;
    const sides = this.side;
    const bounds = this.bound;
    sides.length = 0;
    bounds.length = 0;
    sides.push(first);
    bounds.push(this.need[first] as number);
    this.activity.bump(first >> 1);
    this.activity.lastSide[first >> 1] = first;
    this.activity.lastBound[first >> 1] = this.need[first] as number;
    const kept: number[] = [];
    this.marked++;
    for (const side of this.touched) {
      if (side === first || this.need[side] === NONE || this.mark[side] === this.marked) continue;
      this.mark[side] = this.marked;
      kept.push(side);
    }
    while (this.redundantIn.length < store.trailLength) {
      this.redundantIn = growInt32(this.redundantIn);
      this.redundantFor = growInt32(this.redundantFor);
    }
    for (const side of kept) {
      if (this.isMinimising && this.isRedundant(side, this.need[side] as number, this.entry[side] as number, 0))
        continue;
      sides.push(side);
      bounds.push(this.need[side] as number);
      this.activity.bump(side >> 1);
      this.activity.lastSide[side >> 1] = side;
      this.activity.lastBound[side >> 1] = this.need[side] as number;
    }
    let at = -1;
    this.backjump = 0;
    const levels = new Set<number>([store.level]);
    for (let i = 1; i < sides.length; i++) {
      const level = store.trailLevel[this.entry[sides[i] as number] as number] as number;
      levels.add(level);
      if (level > this.backjump) {
        this.backjump = level;
        at = i;
      }
    }
    if (at > 1) {
      swap(sides, 1, at);
      swap(bounds, 1, at);
    }
    this.glue = levels.size;
    this.size = sides.length;
    for (const side of this.touched) this.need[side] = NONE;
    this.proofName = this.proof?.nogood(sides, bounds) ?? 0;
  }

  /** Whether the atom follows from other atoms of the nogood that came before it. */
  private isRedundant(side: number, bound: number, t: number, depth: number): boolean {
    const store = this.kernel.store;
    const reason = store.trailReason[t] as number;
    if (reason === REASON_DECISION) return false;
    if (this.redundantIn[t] === this.marked && (this.redundantFor[t] as number) >= bound) return true;
    const out = this.nested[depth] as Explanation;
    this.kernel.explain(t, side, bound, out);
    if (this.isChecking) this.checkReason(out, t, side, bound);
    for (let i = 0; i < out.size; i++) {
      const s = out.side[i] as number;
      const k = out.bound[i] as number;
      if ((store.base[s] as number) >= k) continue;
      if ((this.need[s] as number) >= k && (this.entry[s] as number) < t) continue;
      if (depth >= MINIMISE_DEPTH) return false;
      const u = store.indexOf(s, k);
      if (store.trailReason[u] === REASON_DECISION || !this.isRedundant(s, k, u, depth + 1)) return false;
    }
    this.proof?.inference(out, side, bound);
    this.redundantIn[t] = this.marked;
    this.redundantFor[t] = bound;
    return true;
  }
}

function swap(array: number[], i: number, j: number): void {
  const held = array[i] as number;
  array[i] = array[j] as number;
  array[j] = held;
}
