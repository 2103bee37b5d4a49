import type { Kernel, Term } from '../engine/kernel.ts';
import { FORBIDDEN } from '../model/model.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';
import type { OrderedMember, OrderedMembers } from './sequence-gaps.ts';

/**
 * total = Σ of the transitions between direct successors. Below: every present member but the first is entered from the
 * cheapest neighbour that may still come directly before it (and, the other way round, left to the cheapest after it). Left to
 * `RouteBoundPropagator`, which is stronger, where a first and a last member are always there.
 * Exact once the presence and the order of all members are known.
 */
export class TransitionTotalPropagator extends ReasonedPropagator {
  private readonly seq: OrderedMembers;
  private readonly total: Term;
  private readonly n: number;
  private readonly cost: Int32Array;
  /** Index of a member that is always present and first (last), or -1. */
  private readonly first: number;
  private readonly last: number;

  constructor(kernel: Kernel, seq: OrderedMembers, total: Term, first: number, last: number, constraint: number) {
    super(kernel, constraint, 'total', 2);
    this.seq = seq;
    this.total = total;
    this.n = seq.members.length;
    this.cost = new Int32Array(this.n);
    this.first = first;
    this.last = last;
    const literals = [...seq.before].filter((l) => l >= 0);
    for (const { presence } of seq.members) if (presence >= 0) literals.push(presence);
    kernel.post(this, sidesOf([total], literals));
  }

  private isPresent(i: number): boolean {
    const { presence } = this.seq.members[i] as OrderedMember;
    return presence < 0 || this.kernel.store.holds(presence);
  }
  private isAbsent(i: number): boolean {
    const { presence } = this.seq.members[i] as OrderedMember;
    return presence >= 0 && this.kernel.store.fails(presence);
  }

  propagate(): boolean {
    if (this.first >= 0 && this.last >= 0 && this.n > 3) return this.settle();
    return this.boundFrom(true) && this.boundFrom(false) && this.settle();
  }

  /** Literal of "a before b", seen forwards, or backwards in time. */
  private order(a: number, b: number, forwards: boolean): number {
    return this.seq.before[forwards ? a * this.n + b : b * this.n + a] as number;
  }
  private step(a: number, b: number, forwards: boolean): number {
    return this.seq.direct[forwards ? a * this.n + b : b * this.n + a] as number;
  }

  /** Premises for "i does not come directly before j", or false when it may. */
  private excludes(i: number, j: number, forwards: boolean, write: boolean): boolean {
    const store = this.kernel.store;
    if (this.isAbsent(i)) {
      if (write) this.premiseLiteral((this.seq.members[i] as OrderedMember).presence ^ 1);
      return true;
    }
    const reverse = this.order(j, i, forwards);
    if (store.holds(reverse)) {
      if (write) this.premiseLiteral(reverse);
      return true;
    }
    for (let k = 0; k < this.n; k++) {
      if (k === i || k === j || !this.isPresent(k)) continue;
      const one = this.order(i, k, forwards);
      const two = this.order(k, j, forwards);
      if (!store.holds(one) || !store.holds(two)) continue;
      if (write) {
        this.premiseLiteral(one);
        this.premiseLiteral(two);
        const { presence } = this.seq.members[k] as OrderedMember;
        if (presence >= 0) this.premiseLiteral(presence);
      }
      return true;
    }
    return false;
  }

  private boundFrom(forwards: boolean): boolean {
    const { n, cost } = this;
    let sum = 0;
    let greatest = 0;
    const exempt = forwards ? this.first : this.last;
    for (let j = 0; j < n; j++) {
      cost[j] = 0;
      if (j === exempt || !this.isPresent(j)) continue;
      let cheapest = FORBIDDEN;
      for (let i = 0; i < n; i++) {
        const c = this.step(i, j, forwards);
        if (i !== j && c < cheapest && !this.excludes(i, j, forwards, false)) cheapest = c;
      }
      // Nothing can come before it: it is the first one, which costs nothing.
      if (cheapest >= FORBIDDEN) continue;
      cost[j] = cheapest;
      sum += cheapest;
      greatest = Math.max(greatest, cheapest);
    }
    if (exempt < 0) sum -= greatest;
    if (sum <= this.lower(this.total)) return true;
    this.noPremises();
    for (let j = 0; j < n; j++) {
      if (cost[j] === 0) continue;
      const { presence } = this.seq.members[j] as OrderedMember;
      if (presence >= 0) this.premiseLiteral(presence);
      for (let i = 0; i < n; i++) {
        if (i !== j && this.step(i, j, forwards) < (cost[j] as number)) this.excludes(i, j, forwards, true);
      }
    }
    return this.raiseAtLeast(this.total, sum);
  }

  /** All presences and the whole order known: the total is what it is. */
  private settle(): boolean {
    const { n, seq } = this;
    const store = this.kernel.store;
    const present: number[] = [];
    for (let i = 0; i < n; i++) {
      if (this.isPresent(i)) present.push(i);
      else if (!this.isAbsent(i)) return true;
    }
    for (const a of present) {
      for (const b of present) {
        if (a < b && !store.holds(seq.before[a * n + b] as number) && !store.fails(seq.before[a * n + b] as number))
          return true;
      }
    }
    const rank = (a: number) => present.filter((b) => b !== a && store.holds(seq.before[b * n + a] as number)).length;
    const sorted = present.map((a) => [rank(a), a] as const).sort((x, y) => x[0] - y[0]);
    let total = 0;
    this.noPremises();
    for (const { presence } of seq.members) {
      if (presence >= 0) this.premiseLiteral(store.holds(presence) ? presence : presence ^ 1);
    }
    for (let x = 1; x < sorted.length; x++) {
      const pair = (sorted[x - 1] as readonly [number, number])[1] * n + (sorted[x] as readonly [number, number])[1];
      if (!store.holds(seq.before[pair] as number)) return true;
      this.premiseLiteral(seq.before[pair] as number);
      total += seq.direct[pair] as number;
    }
    return this.raiseAtLeast(this.total, total) && this.raiseAtMost(this.total, total);
  }
}
