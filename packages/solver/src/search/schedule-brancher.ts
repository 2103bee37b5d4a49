import type { Compilation, EngineInterval } from '../engine/compilation.ts';
import type { State, StateNeed, StateWriter } from '../model/model.ts';
import type { ActivityHeap } from './activity-heap.ts';
import type { Brancher } from './search.ts';
import { UntilBacktrack } from './until-backtrack.ts';

/** Added to the start of what is not placed yet, to prefer what is. */
const LATER = 1 << 28;

/**
 * Two ways to branch, taken in turn from restart to restart. Schedule-or-postpone: the present interval that can start
 * earliest starts then, with the option that can start earliest. Activity: the variable most active in recent conflicts
 * first. Both lean to the incumbent's values where there are any.
 */
export class ScheduleBrancher implements Brancher {
  side = -1;
  bound = 0;
  /** Values to lean to, per engine variable; NaN: none. */
  readonly wish: Float64Array;
  byActivity = false;
  splitsAtLast = true;
  /** While a first plan is looked for: what may be left out is. */
  leavesOut = false;
  private readonly open: number[] = [];
  /** The master that is being put before others; -1: none. */
  private current = -1;
  private currentStart = 0;
  private tries = 0;
  /** Masters that were put first. */
  private readonly placed: UntilBacktrack;
  /** Masters of which nothing can become unordered. */
  private readonly settled: UntilBacktrack;
  /** Per master: which of its orders was open when last looked at; it probably still is. */
  private readonly lastOpen: Int32Array;
  /** Per interval: the intervals of the sequences that it is a member of. */
  private readonly company = new Map<number, number[][]>();
  private readonly at: Compilation;
  private readonly activity: ActivityHeap;
  /** Variables that activity chooses among. */
  private readonly isUsed: Uint8Array;
  /** Variables that another one stands for. */
  private readonly isReplaced: Uint8Array;
  /** Per literal variable: 1 when true is the better first guess, 0 for false. */
  private readonly guess: Uint8Array;
  private readonly optionsOf = new Map<number, number[]>();
  /** Per master: literals that say it comes first, and what may serve its needs (an interval, or -1: the first value). */
  private readonly ordersOf = new Map<number, { readonly literal: number; readonly other: number }[]>();
  private readonly supportsOf = new Map<number, { readonly variable: number; readonly writer: number }[]>();
  private readonly isOption: Uint8Array;
  /** Variables that mean something only while a literal of this variable holds. */
  private readonly owned = new Map<number, number[]>();
  private readonly isOrder: Uint8Array;
  /** Orders taken from the heap while they did not matter. */
  private readonly shelved: number[] = [];

  constructor(at: Compilation, activity: ActivityHeap) {
    this.at = at;
    this.activity = activity;
    const count = at.kernel.store.variableCount;
    this.wish = new Float64Array(count).fill(Number.NaN);
    this.guess = new Uint8Array(count);
    this.isUsed = new Uint8Array(count).fill(1);
    this.isReplaced = new Uint8Array(count);
    this.isOrder = new Uint8Array(count);
    for (const { variable } of at.orders) this.isOrder[variable] = 1;
    at.terms.forEach(({ variable }, id) => {
      if (variable !== id) {
        this.isUsed[id] = 0;
        this.isReplaced[id] = 1;
      }
    });
    for (const { variable } of at.supports) this.guess[variable] = 1;
    this.isOption = new Uint8Array(at.intervals.length);
    this.placed = new UntilBacktrack(at.intervals.length);
    this.settled = new UntilBacktrack(at.intervals.length);
    this.lastOpen = new Int32Array(at.intervals.length);
    for (const c of at.model.constraints) {
      if (c.kind === 'sequence') {
        const members = c.members.map(({ interval }) => interval);
        for (const id of members) this.company.set(id, [...(this.company.get(id) ?? []), members]);
      }
      if (c.kind !== 'alternative') continue;
      this.optionsOf.set(c.master, [...(this.optionsOf.get(c.master) ?? []), ...c.options]);
      for (const option of c.options) this.isOption[option] = 1;
    }
    const add = <T>(map: Map<number, T[]>, key: number, item: T) => map.set(key, [...(map.get(key) ?? []), item]);
    for (const { variable, first, second } of at.orders) {
      const [a, b] = [at.root(first.to.interval), at.root(second.to.interval)];
      add(this.ordersOf, a, { literal: 2 * variable, other: b });
      add(this.ordersOf, b, { literal: 2 * variable + 1, other: a });
    }
    for (const { variable, constraint, need, writer } of at.supports) {
      const c = at.model.constraints[constraint] as State;
      const needer = (c.needs[need] as StateNeed).to.interval;
      const source = writer < 0 ? -1 : (c.writers[writer] as StateWriter).to.interval;
      add(this.supportsOf, at.root(needer), { variable, writer: source });
    }
    for (const { minimise } of at.model.objectives) {
      for (const { coefficient, variable } of minimise.terms) {
        const term = at.term(variable);
        if (coefficient < 0) this.guess[term.variable] = 1;
      }
    }
    for (let v = 0; v < count; v++) {
      const owner = at.kernel.store.owner[v] as number;
      if (owner >= 0) this.owned.set(owner >> 1, [...(this.owned.get(owner >> 1) ?? []), v]);
      if (at.isPairwise && !(at.kernel.store.min(v) >= 0 && at.kernel.store.max(v) <= 1)) this.isUsed[v] = 0;
      if (this.isUsed[v]) activity.insert(v);
    }
  }

  returned(variable: number): void {
    this.current = -1;
    if (this.isUsed[variable]) this.activity.insert(variable);
    const owned = this.owned.get(variable);
    if (owned !== undefined) for (const v of owned) if (this.isUsed[v]) this.activity.insert(v);
  }
  refill(): void {
    for (const v of this.shelved) this.activity.insert(v);
    this.shelved.length = 0;
  }
  restarted(): void {
    this.refill();
    // While there is no plan yet, most tries are by schedule.
    this.byActivity = !this.leavesOut || ++this.tries % 3 === 0;
  }

  next(): void {
    this.side = -1;
    if (!this.byActivity && this.schedule()) return;
    if (this.mostActive() || this.schedule()) return;
    const store = this.at.kernel.store;
    for (let v = 0; v < store.variableCount; v++) {
      if (this.isReplaced[v] || store.isFixed(v) || (this.isOrder[v] && !this.matters(v))) continue;
      const owner = store.owner[v] as number;
      if (owner < 0 || store.holds(owner)) return this.decide(v);
    }
  }

  private schedule(): boolean {
    const { at } = this;
    const store = at.kernel.store;
    if (this.leavesOut && this.leaveOut()) return true;
    // The one that is being put first stays the one until it is, or something was taken back.
    if (this.current >= 0 && this.earliestStart(this.current) === this.currentStart && this.putFirst(this.current))
      return true;
    if (this.current >= 0 && this.earliestStart(this.current) === this.currentStart)
      this.placed.add(this.current, store.level);
    this.current = -1;
    // Among those that could start before the first of them could end, the one that must start soonest.
    let firstEnd = Number.POSITIVE_INFINITY;
    const open = this.open;
    open.length = 0;
    for (let id = 0; id < at.intervals.length; id++) {
      const x = at.intervals[id] as EngineInterval;
      if (x.presence >= 0 && !store.holds(x.presence)) continue;
      if (
        !(at.isPairwise ? this.isUnordered(id) : !store.isFixed(x.start.variable) || !store.isFixed(x.end.variable)) &&
        !this.openOption(id)
      ) {
        continue;
      }
      open.push(id);
      firstEnd = Math.min(firstEnd, store.min(x.end.variable) + x.end.offset);
    }
    let best = -1;
    let bestStart = 0;
    let bestLatest = 0;
    for (const id of open) {
      const x = at.intervals[id] as EngineInterval;
      const start = store.min(x.start.variable) + x.start.offset;
      if (start > firstEnd) continue;
      const latest = store.max(x.start.variable) + x.start.offset;
      if (best < 0 || latest < bestLatest || (latest === bestLatest && start < bestStart)) {
        best = id;
        bestStart = start;
        bestLatest = latest;
      }
    }
    if (best < 0) return at.isPairwise && this.startEarliest();
    const options = this.optionsOf.get(best);
    if (options !== undefined) {
      let chosen = -1;
      let earliest = 0;
      for (const option of options) {
        const x = at.intervals[option] as EngineInterval;
        if (x.presence < 0 || store.holds(x.presence) || store.fails(x.presence)) continue;
        const start = Math.max(store.min(x.start.variable) + x.start.offset, this.loadBeside(option));
        if (chosen < 0 || start < earliest) {
          chosen = x.presence;
          earliest = start;
        }
      }
      if (chosen >= 0) {
        this.side = chosen;
        this.bound = 1 - (chosen & 1);
        return true;
      }
    }
    if (at.isPairwise) {
      this.current = at.root(best);
      this.currentStart = this.earliestStart(this.current);
      return this.putFirst(this.current);
    }
    const x = at.intervals[best] as EngineInterval;
    const variable = store.isFixed(x.start.variable) ? x.end.variable : x.start.variable;
    this.side = 2 * variable + 1;
    this.bound = -store.min(variable);
    return true;
  }

  /** Decide what serves the needs of a master, then that it comes before whatever it is not yet ordered against. */
  private putFirst(root: number): boolean {
    const { at } = this;
    const store = at.kernel.store;
    let chosen = -1;
    let earliest = 0;
    for (const { variable, writer } of this.supportsOf.get(root) ?? []) {
      if (store.isFixed(variable)) continue;
      const isWaiting = writer >= 0 && !this.placed.has(at.root(writer));
      const start = writer < 0 ? -1 : this.earliestStart(writer) + (isWaiting ? LATER : 0);
      if (chosen >= 0 && start >= earliest) continue;
      chosen = variable;
      earliest = start;
    }
    if (chosen >= 0) {
      this.side = 2 * chosen;
      this.bound = 1;
      return true;
    }
    for (const { literal, other } of this.ordersOf.get(root) ?? []) {
      if (store.isFixed(literal >> 1) || !this.matters(literal >> 1)) continue;
      this.side = this.placed.has(other) ? literal ^ 1 : literal;
      this.bound = 1 - (this.side & 1);
      return true;
    }
    return false;
  }

  /** Work that is already in the sequences of an interval. */
  private loadBeside(id: number): number {
    const { intervals, kernel } = this.at;
    let most = 0;
    for (const members of this.company.get(id) ?? []) {
      let load = 0;
      for (const member of members) {
        const { presence, minDuration } = intervals[member] as EngineInterval;
        if (presence < 0 || kernel.store.holds(presence)) load += minDuration;
      }
      most = Math.max(most, load);
    }
    return most;
  }

  wentBack(level: number): void {
    this.placed.wentBack(level);
    this.settled.wentBack(level);
  }

  /** Whether something that serves it, or its order against something present, is still to be decided. */
  private isUnordered(id: number): boolean {
    const root = this.at.root(id);
    if (this.isOption[id] || this.placed.has(root) || this.settled.has(root)) return false;
    const store = this.at.kernel.store;
    for (const { variable } of this.supportsOf.get(root) ?? []) if (!store.isFixed(variable)) return true;
    const orders = this.ordersOf.get(root) ?? [];
    const hinted = orders[this.lastOpen[root] as number];
    if (hinted !== undefined && !store.isFixed(hinted.literal >> 1) && this.matters(hinted.literal >> 1)) return true;
    let mayMatter = false;
    for (let i = 0; i < orders.length; i++) {
      const variable = (orders[i] as { literal: number }).literal >> 1;
      if (store.isFixed(variable)) continue;
      if (this.matters(variable)) {
        this.lastOpen[root] = i;
        return true;
      }
      mayMatter ||= !this.neverMatters(variable);
    }
    if (!mayMatter) this.settled.add(root, store.level);
    return false;
  }

  /** An order matters once both of its intervals are present in one constraint. */
  private matters(variable: number): boolean {
    const store = this.at.kernel.store;
    for (const [a, b] of this.at.orderMatters.get(variable) ?? []) {
      if ((a < 0 || store.holds(a)) && (b < 0 || store.holds(b))) return true;
    }
    return false;
  }

  /** Whether in each constraint one of the two intervals is absent. */
  private neverMatters(variable: number): boolean {
    const store = this.at.kernel.store;
    for (const [a, b] of this.at.orderMatters.get(variable) ?? []) {
      if (!(a >= 0 && store.fails(a)) && !(b >= 0 && store.fails(b))) return false;
    }
    return true;
  }

  /** All is ordered: the interval that can start soonest does so. */
  private startEarliest(): boolean {
    const { at } = this;
    const store = at.kernel.store;
    let variable = -1;
    let earliest = 0;
    for (const { start, end, presence } of at.intervals) {
      if (presence >= 0 && !store.holds(presence)) continue;
      const open = !store.isFixed(start.variable) ? start : store.isFixed(end.variable) ? null : end;
      if (open === null) continue;
      const time = store.min(open.variable) + open.offset;
      if (variable >= 0 && time >= earliest) continue;
      variable = open.variable;
      earliest = time;
    }
    if (variable < 0) return false;
    this.side = 2 * variable + 1;
    this.bound = -store.min(variable);
    return true;
  }

  private earliestStart(id: number): number {
    const { start } = this.at.intervals[id] as EngineInterval;
    return this.at.kernel.store.min(start.variable) + start.offset;
  }

  /** Decide the presence of an interval that may be left out, and is no option of another: against it. */
  private leaveOut(): boolean {
    const { at } = this;
    const store = at.kernel.store;
    for (let id = 0; id < at.intervals.length; id++) {
      if (this.isOption[id]) continue;
      const { presence } = at.intervals[id] as EngineInterval;
      if (presence < 0 || store.holds(presence) || store.fails(presence)) continue;
      this.side = presence ^ 1;
      this.bound = presence & 1;
      return true;
    }
    return false;
  }

  private openOption(id: number): boolean {
    const options = this.optionsOf.get(id);
    if (options === undefined) return false;
    const store = this.at.kernel.store;
    for (const option of options) {
      const { presence } = this.at.intervals[option] as EngineInterval;
      if (presence >= 0 && !store.holds(presence) && !store.fails(presence)) return true;
    }
    return false;
  }

  private mostActive(): boolean {
    const store = this.at.kernel.store;
    for (let v = this.activity.pop(); v >= 0; v = this.activity.pop()) {
      if (store.isFixed(v)) continue;
      const owner = store.owner[v] as number;
      if (owner >= 0 && !store.holds(owner)) {
        if (store.fails(owner)) continue;
        this.activity.insert(v);
        this.decide(owner >> 1);
        return true;
      }
      if (this.isOrder[v] && !this.matters(v)) {
        this.shelved.push(v);
        continue;
      }
      this.decide(v);
      // Still open after this decision, unless it was two-valued.
      this.activity.insert(v);
      return true;
    }
    return false;
  }

  private decide(v: number): void {
    const store = this.at.kernel.store;
    const min = store.min(v);
    const max = store.max(v);
    let value = this.wish[v] as number;
    const last = this.activity.lastSide[v] as number;
    if (max - min > 1 && last >= 0 && this.splitsAtLast) {
      // Split where a conflict did, towards the value wished for.
      const k = this.activity.lastBound[v] as number;
      const low = last & 1 ? 1 - k : k;
      if (low > min && low <= max) {
        if (!Number.isNaN(value) && value >= low) {
          this.side = 2 * v;
          this.bound = low;
        } else {
          this.side = 2 * v + 1;
          this.bound = 1 - low;
        }
        return;
      }
    }
    if (Number.isNaN(value)) value = max - min === 1 && this.guess[v] ? max : min;
    if (value <= min) {
      this.side = 2 * v + 1;
      this.bound = -min;
    } else if (value >= max) {
      this.side = 2 * v;
      this.bound = max;
    } else {
      this.side = 2 * v + 1;
      this.bound = -value;
    }
  }
}
