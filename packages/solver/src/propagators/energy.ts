import type { Kernel, Term } from '../engine/kernel.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';

/** A member of a resource as the engine holds it. `presence` is a literal or -1. */
export interface EnergyMember {
  readonly start: Term;
  readonly end: Term;
  readonly presence: number;
  readonly minDuration: number;
  readonly demand: number;
}

/** Calls over which the share of fruitful ones is taken, and how many calls are passed over while it is too small. */
const TRIAL = 400;
const REST = 15;
/**
 * Measured on j30, j60 and job shops: on one machine it always pays; where several run side by side it makes bounds from below far
 * better, and elsewhere the search slower unless it finds something in every fourth call.
 */
const LEAST_SHARE = 0.01;
const WANTED_SHARE = 0.25;

/**
 * Energy on a resource: what the present members cannot keep out of a stretch [a, b), times their demands, may not exceed
 * capacity × (b − a); and a member that would bring it above starts later or ends earlier. Stretches run from an earliest start
 * to a latest end; compulsory parts count wherever they lie. O(n²) a call; passed over most of the time where it finds too little.
 *
 * A member with end ≥ a + m and start ≤ b − m, at least m long, spends at least m of [a, b): so a reason is two atoms a member,
 * weakened or left out as long as the sum still exceeds.
 * @source [VILIM-2011] [SCHUTT-FEYDY-STUCKEY-2013]
 */
export class EnergyPropagator extends ReasonedPropagator {
  private readonly members: readonly EnergyMember[];
  private readonly capacity: number;
  private readonly isLogged: () => boolean;
  private size = 0;
  /** Of each present member that takes something, its index among the members. */
  private readonly who: Int32Array;
  private readonly demand: Int32Array;
  private readonly length: Int32Array;
  private readonly earliestStart: Int32Array;
  private readonly latestStart: Int32Array;
  private readonly earliestEnd: Int32Array;
  private readonly latestEnd: Int32Array;
  /** The same four with time running backwards. */
  private readonly mirrored: readonly [Int32Array, Int32Array, Int32Array, Int32Array];
  private readonly byStart: Int32Array;
  private readonly byEnd: Int32Array;
  /** Energy of compulsory parts before each earliest start, and before each latest end. */
  private readonly sureBeforeStart: Int32Array;
  private readonly sureBeforeEnd: Int32Array;
  private readonly spent: Int32Array;
  private calls = 0;
  private fruitful = 0;
  private resting = 0;

  constructor(
    kernel: Kernel,
    members: readonly EnergyMember[],
    capacity: number,
    constraint: number,
    isLogged: () => boolean,
  ) {
    super(kernel, constraint, 'energy', 3);
    this.members = members.filter(({ minDuration, demand }) => minDuration > 0 && demand > 0);
    this.capacity = capacity;
    this.isLogged = isLogged;
    const n = this.members.length;
    const row = () => new Int32Array(n);
    this.who = row();
    this.demand = row();
    this.length = row();
    this.earliestStart = row();
    this.latestStart = row();
    this.earliestEnd = row();
    this.latestEnd = row();
    this.mirrored = [row(), row(), row(), row()];
    this.byStart = row();
    this.byEnd = row();
    this.sureBeforeStart = row();
    this.sureBeforeEnd = row();
    this.spent = row();
    kernel.post(
      this,
      sidesOf(
        this.members.flatMap(({ start, end }) => [start, end]),
        this.members.flatMap(({ presence }) => (presence < 0 ? [] : [presence])),
      ),
    );
  }

  propagate(): boolean {
    if (this.resting > 0) {
      this.resting--;
      return true;
    }
    if (++this.calls >= TRIAL) {
      this.calls >>= 1;
      this.fruitful >>= 1;
    }
    const share = this.capacity === 1 || this.kernel.refutesFromBelow ? LEAST_SHARE : WANTED_SHARE;
    if (this.fruitful < share * this.calls) this.resting = REST;
    this.gather();
    if (this.size < 3) return true;
    const { earliestStart, latestStart, earliestEnd, latestEnd, mirrored, size } = this;
    if (!this.sweep(earliestStart, latestStart, earliestEnd, latestEnd, false)) return false;
    const [start, lateStart, end, lateEnd] = mirrored;
    for (let x = 0; x < size; x++) {
      start[x] = -(latestEnd[x] as number);
      lateStart[x] = -(earliestEnd[x] as number);
      end[x] = -(latestStart[x] as number);
      lateEnd[x] = -(earliestStart[x] as number);
    }
    return this.sweep(start, lateStart, end, lateEnd, true);
  }

  private gather(): void {
    const { store } = this.kernel;
    let size = 0;
    for (let i = 0; i < this.members.length; i++) {
      const { start, end, presence, minDuration, demand } = this.members[i] as EnergyMember;
      if (presence >= 0 && !store.holds(presence)) continue;
      this.who[size] = i;
      this.demand[size] = demand;
      this.length[size] = minDuration;
      this.earliestStart[size] = this.lower(start);
      this.latestStart[size] = this.upper(start);
      this.earliestEnd[size] = this.lower(end);
      this.latestEnd[size] = this.upper(end);
      this.byStart[size] = size;
      this.byEnd[size] = size;
      size++;
    }
    this.size = size;
  }

  /** All stretches, ends from late to early, beginnings from late to early. Mirrored: bounds found are those of ends. */
  private sweep(
    start: Int32Array,
    lateStart: Int32Array,
    end: Int32Array,
    lateEnd: Int32Array,
    isMirrored: boolean,
  ): boolean {
    const { size, byStart, byEnd, demand, length, sureBeforeStart, sureBeforeEnd, capacity } = this;
    sortDown(byStart, start, size);
    sortDown(byEnd, lateEnd, size);
    this.sumSure(lateStart, end, start, sureBeforeStart);
    this.sumSure(lateStart, end, lateEnd, sureBeforeEnd);
    for (let y = 0; y < size; y++) {
      const last = byEnd[y] as number;
      const b = lateEnd[last] as number;
      if (y > 0 && b === (lateEnd[byEnd[y - 1] as number] as number)) continue;
      let energy = 0;
      let greatest = 0;
      let greatestOf = -1;
      for (let x = 0; x < size; x++) {
        const i = byStart[x] as number;
        const a = start[i] as number;
        if (a >= b) continue;
        const r = demand[i] as number;
        const p = length[i] as number;
        // Compulsory parts are summed apart.
        const sure = Math.max(0, Math.min(b, end[i] as number) - (lateStart[i] as number));
        if ((lateEnd[i] as number) <= b) energy += r * Math.max(0, p - sure);
        else {
          const wanted = r * (Math.min(b - a, p) - sure);
          if (wanted > greatest) {
            greatest = wanted;
            greatestOf = i;
          }
        }
        const room = capacity * (b - a) - energy - ((sureBeforeEnd[last] as number) - (sureBeforeStart[i] as number));
        if (room < 0) return this.exclude(-1, a, b, lateStart, end, isMirrored);
        if (greatest > room && !this.exclude(greatestOf, a, b, lateStart, end, isMirrored)) return false;
      }
    }
    return true;
  }

  private sumSure(lateStart: Int32Array, end: Int32Array, at: Int32Array, out: Int32Array): void {
    const { size, demand } = this;
    for (let x = 0; x < size; x++) {
      const t = at[x] as number;
      let sum = 0;
      for (let i = 0; i < size; i++) {
        const from = lateStart[i] as number;
        const to = end[i] as number;
        if (from < to && from < t) sum += (demand[i] as number) * ((to < t ? to : t) - from);
      }
      out[x] = sum;
    }
  }

  /**
   * What the others spend in [a, b) leaves `pushed` only so much of it: it starts so much before b at the earliest (ends so much
   * after a at the latest, mirrored). -1: there is too much without pushing, which is said as a bound that one of them cannot keep.
   */
  private exclude(
    pushed: number,
    a: number,
    b: number,
    lateStart: Int32Array,
    end: Int32Array,
    isMirrored: boolean,
  ): boolean {
    const { size, demand, length, spent, capacity } = this;
    let total = 0;
    let target = pushed;
    for (let i = 0; i < size; i++) {
      const m = Math.min(length[i] as number, b - a, (end[i] as number) - a, b - (lateStart[i] as number));
      spent[i] = m > 0 && i !== pushed ? m : 0;
      total += (demand[i] as number) * (spent[i] as number);
      if (pushed < 0 && (spent[i] as number) > 0) target = i;
    }
    const r = demand[target] as number;
    if (pushed < 0) total -= r * (spent[target] as number);
    const allowed = Math.floor((capacity * (b - a) - total) / r);
    const least = pushed < 0 ? (spent[target] as number) : Math.max(1, allowed + 1);
    spent[target] = 0;
    let surplus = total + r * least - capacity * (b - a) - 1;
    if (surplus < 0) return true;
    this.noPremises();
    this.premiseSpending(target, least, a, b, isMirrored, true);
    // What is new is left out first: older bounds are cheaper to keep.
    for (let pass = 0; pass < 2; pass++) {
      for (let i = 0; i < size; i++) {
        const part = (demand[i] as number) * (spent[i] as number);
        if (part === 0 || part > surplus || (pass === 0 && !this.isNew(i))) continue;
        surplus -= part;
        spent[i] = 0;
      }
    }
    for (let i = 0; i < size; i++) {
      if ((spent[i] as number) === 0) continue;
      const spare = Math.min((spent[i] as number) - 1, Math.floor(surplus / (demand[i] as number)));
      surplus -= spare * (demand[i] as number);
      this.premiseSpending(i, (spent[i] as number) - spare, a, b, isMirrored, false);
    }
    this.fruitful++;
    if (this.isLogged()) {
      this.argue(isMirrored ? -b : a);
      this.argue(isMirrored ? -a : b);
    }
    const member = this.members[this.who[target] as number] as EnergyMember;
    return isMirrored ? this.raiseAtMost(member.end, least - b - 1) : this.raiseAtLeast(member.start, b - least + 1);
  }

  /** Atoms by which a member spends m of the stretch; of the pushed one only the half that the conclusion does not speak of. */
  private premiseSpending(x: number, m: number, a: number, b: number, isMirrored: boolean, isPushed: boolean): void {
    const { start, end, presence } = this.members[this.who[x] as number] as EnergyMember;
    if (presence >= 0) this.premiseLiteral(presence);
    const [from, to] = isMirrored ? [-b, -a] : [a, b];
    if (!isPushed || !isMirrored) this.premiseAtLeast(end, from + m);
    if (!isPushed || isMirrored) this.premiseAtMost(start, to - m);
  }

  private isNew(x: number): boolean {
    const { store } = this.kernel;
    const since = store.level === 0 ? 0 : (store.levelStart[store.level] as number);
    const { start, end } = this.members[this.who[x] as number] as EnergyMember;
    return (store.head[2 * start.variable + 1] as number) >= since || (store.head[2 * end.variable] as number) >= since;
  }
}

function sortDown(order: Int32Array, key: Int32Array, size: number): void {
  for (let i = 1; i < size; i++) {
    const item = order[i] as number;
    const value = key[item] as number;
    let j = i - 1;
    while (j >= 0 && (key[order[j] as number] as number) < value) {
      order[j + 1] = order[j] as number;
      j--;
    }
    order[j + 1] = item;
  }
}
