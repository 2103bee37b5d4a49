import type { Kernel, Term } from '../engine/kernel.ts';
import { FORBIDDEN } from '../model/model.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';

export interface OrderedMember {
  readonly start: Term;
  readonly end: Term;
  readonly presence: number;
  readonly minDuration: number;
}

/** Members of a sequence with their order literals and tables, all row-major n × n. */
export interface OrderedMembers {
  readonly members: readonly OrderedMember[];
  /** Literal "i before j"; -1 on the diagonal. */
  readonly before: Int32Array;
  /** Transition when j directly follows i. */
  readonly direct: Int32Array;
  /** Least time from the end of i to the start of j, whatever comes between. */
  readonly least: Int32Array;
}

/**
 * Where a direct transition is longer than the shortest way round through others: when i is before j, the gap is the direct
 * one unless some third member may still come between; then it is at least the cheapest way that begins with one of those.
 */
export class SequenceGapsPropagator extends ReasonedPropagator {
  private readonly seq: OrderedMembers;
  private readonly n: number;
  private readonly loose: Int32Array;
  /** Where the loose pairs of each first member begin. */
  private readonly looseStart: Int32Array;
  private readonly witness: Int32Array;

  constructor(kernel: Kernel, seq: OrderedMembers, constraint: number) {
    super(kernel, constraint, 'direct', 2);
    this.seq = seq;
    const n = (this.n = seq.members.length);
    const loose: number[] = [];
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        if (i !== j && (seq.direct[i * n + j] as number) > (seq.least[i * n + j] as number)) loose.push(i * n + j);
      }
    }
    this.loose = Int32Array.from(loose);
    this.looseStart = new Int32Array(n + 1);
    for (const pair of loose) (this.looseStart[((pair / n) | 0) + 1] as number)++;
    for (let i = 0; i < n; i++) (this.looseStart[i + 1] as number) += this.looseStart[i] as number;
    this.witness = new Int32Array(n * n).fill(-1);
    if (loose.length > 0) {
      const literals = [...seq.before].filter((l) => l >= 0);
      for (const { presence } of seq.members) if (presence >= 0) literals.push(presence);
      kernel.post(
        this,
        sidesOf(
          seq.members.flatMap(({ start, end }) => [start, end]),
          literals,
        ),
      );
    }
  }

  private holdsPresence(i: number): boolean {
    const { presence } = this.seq.members[i] as OrderedMember;
    return presence < 0 || this.kernel.store.holds(presence);
  }

  propagate(): boolean {
    const store = this.kernel.store;
    const { n, seq } = this;
    for (let i = 0; i < n; i++) {
      if (this.looseStart[i] === this.looseStart[i + 1] || !this.holdsPresence(i)) continue;
      for (let x = this.looseStart[i] as number; x < (this.looseStart[i + 1] as number); x++) {
        const pair = this.loose[x] as number;
        const order = seq.before[pair] as number;
        const j = pair - i * n;
        if (store.fails(order) || !this.holdsPresence(j)) continue;
        if (!this.checkPair(i, j, pair, store.holds(order))) return false;
      }
    }
    return true;
  }

  /** The literal that keeps k from coming between i and j, or -1 when it still may. */
  private whyNotBetween(i: number, j: number, k: number): number {
    const store = this.kernel.store;
    const { presence } = this.seq.members[k] as OrderedMember;
    if (presence >= 0 && store.fails(presence)) return presence ^ 1;
    const beforeFirst = this.seq.before[k * this.n + i] as number;
    if (store.holds(beforeFirst)) return beforeFirst;
    const afterSecond = this.seq.before[j * this.n + k] as number;
    return store.holds(afterSecond) ? afterSecond : -1;
  }

  private wayThrough(i: number, j: number, k: number): number {
    const { seq, n } = this;
    const first = seq.direct[i * n + k] as number;
    const rest = seq.least[k * n + j] as number;
    if (first >= FORBIDDEN || rest >= FORBIDDEN) return FORBIDDEN;
    return first + (seq.members[k] as OrderedMember).minDuration + rest;
  }

  private checkPair(i: number, j: number, pair: number, isOrdered: boolean): boolean {
    const { seq, n } = this;
    let gap = seq.direct[pair] as number;
    const least = seq.least[pair] as number;
    // Mostly the member that allowed the least gap last time still does.
    const hint = this.witness[pair] as number;
    if (hint >= 0 && this.whyNotBetween(i, j, hint) < 0 && this.wayThrough(i, j, hint) <= least) return true;
    for (let k = 0; k < n && gap > least; k++) {
      if (k === i || k === j || this.whyNotBetween(i, j, k) >= 0) continue;
      const way = this.wayThrough(i, j, k);
      if (way < gap) gap = way;
      if (gap <= least) this.witness[pair] = k;
    }
    if (gap <= least) return true;
    const a = seq.members[i] as OrderedMember;
    const b = seq.members[j] as OrderedMember;
    const isImpossible = gap >= FORBIDDEN;
    const ready = this.lower(a.end);
    const latest = this.upper(b.start);
    if (!isImpossible && !isOrdered && ready + gap <= latest) return true;
    if (!isImpossible && this.lower(b.start) >= ready + gap && this.upper(a.end) <= latest - gap) return true;
    this.noPremises();
    for (let k = 0; k < n; k++) {
      if (k === i || k === j || this.wayThrough(i, j, k) >= gap) continue;
      this.premiseLiteral(this.whyNotBetween(i, j, k));
    }
    const conditions = [seq.before[pair] as number, a.presence, b.presence].filter((l) => l >= 0);
    if (isImpossible) return this.refuteOne(conditions);
    if (ready + gap > latest) {
      this.premiseAtLeast(a.end, ready);
      this.premiseAtMost(b.start, ready + gap - 1);
      return this.refuteOne(conditions);
    }
    this.premiseLiterals(conditions);
    const common = this.sides.length;
    this.premiseAtLeast(a.end, ready);
    if (!this.raiseAtLeast(b.start, ready + gap)) return false;
    this.sides.length = common;
    this.bounds.length = common;
    const last = this.upper(b.start);
    this.premiseAtMost(b.start, last);
    return this.raiseAtMost(a.end, last - gap);
  }
}
