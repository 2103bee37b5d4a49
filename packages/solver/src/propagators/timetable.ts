import type { Explanation, Kernel, Propagator, Term } from '../engine/kernel.ts';
import { REASON_RECORD } from '../engine/store.ts';

/** A member of a cumulative as the engine holds it. `presence` is a literal or -1. */
export interface TimetableMember {
  readonly start: Term;
  readonly end: Term;
  readonly presence: number;
  readonly demand: number;
}

const PUSH_START = 0;
const PUSH_END = 1;
const EXCLUDE = 2;

/**
 * Cumulative by timetable: the profile of compulsory parts [latest start, earliest end) may not exceed the capacity, and no
 * member may run where it would. Reasons are pointwise: at one instant u each of a few members must run ([s ≤ u] and
 * [e > u]); u follows the bound that is asked for, and members are left out while the demand still exceeds the capacity.
 */
export class TimetablePropagator implements Propagator {
  readonly constraint: number;
  readonly label = 'timetable';
  readonly priority = 2;
  private readonly kernel: Kernel;
  private readonly id: number;
  private readonly n: number;
  private readonly capacity: number;
  private readonly startVariable: Int32Array;
  private readonly startOffset: Int32Array;
  private readonly endVariable: Int32Array;
  private readonly endOffset: Int32Array;
  private readonly presence: Int32Array;
  private readonly demand: Int32Array;
  /** 1: bounds are conditional on the presence, so that an open member may be pushed. */
  private readonly isConditional: Uint8Array;

  private readonly partStart: Int32Array;
  private readonly partEnd: Int32Array;
  private readonly byStart: Int32Array;
  private readonly byEnd: Int32Array;
  private readonly segmentTime: Int32Array;
  private readonly segmentHeight: Int32Array;
  private segments = 0;

  constructor(kernel: Kernel, members: readonly TimetableMember[], capacity: number, constraint: number) {
    this.kernel = kernel;
    this.capacity = capacity;
    this.constraint = constraint;
    const n = (this.n = members.length);
    this.startVariable = Int32Array.from(members, (m) => m.start.variable);
    this.startOffset = Int32Array.from(members, (m) => m.start.offset);
    this.endVariable = Int32Array.from(members, (m) => m.end.variable);
    this.endOffset = Int32Array.from(members, (m) => m.end.offset);
    this.presence = Int32Array.from(members, (m) => m.presence);
    this.demand = Int32Array.from(members, (m) => m.demand);
    this.isConditional = Uint8Array.from(members, (m) =>
      m.presence >= 0 &&
      kernel.store.owner[m.start.variable] === m.presence &&
      kernel.store.owner[m.end.variable] === m.presence
        ? 1
        : 0,
    );
    this.partStart = new Int32Array(n);
    this.partEnd = new Int32Array(n);
    this.byStart = Int32Array.from({ length: n }, (_, i) => i);
    this.byEnd = Int32Array.from({ length: n }, (_, i) => i);
    this.segmentTime = new Int32Array(2 * n + 2);
    this.segmentHeight = new Int32Array(2 * n + 2);
    const sides: number[] = [];
    for (const m of members) {
      sides.push(2 * m.start.variable, 2 * m.start.variable + 1, 2 * m.end.variable, 2 * m.end.variable + 1);
      if (m.presence >= 0) sides.push(m.presence);
    }
    this.id = kernel.post(this, sides);
  }

  private earliestStart(i: number): number {
    return (this.kernel.store.lb[2 * (this.startVariable[i] as number)] as number) + (this.startOffset[i] as number);
  }
  private latestStart(i: number): number {
    return (
      (this.startOffset[i] as number) - (this.kernel.store.lb[2 * (this.startVariable[i] as number) + 1] as number)
    );
  }
  private earliestEnd(i: number): number {
    return (this.kernel.store.lb[2 * (this.endVariable[i] as number)] as number) + (this.endOffset[i] as number);
  }
  private latestEnd(i: number): number {
    return (this.endOffset[i] as number) - (this.kernel.store.lb[2 * (this.endVariable[i] as number) + 1] as number);
  }

  propagate(): boolean {
    if (!this.buildProfile()) return false;
    if (this.segments === 0) return true;
    for (let i = 0; i < this.n; i++) if (!this.filter(i)) return false;
    return true;
  }

  private buildProfile(): boolean {
    const { kernel, n, partStart, partEnd, byStart, byEnd, segmentTime, segmentHeight, demand } = this;
    const store = kernel.store;
    let parts = 0;
    for (let i = 0; i < n; i++) {
      const presence = this.presence[i] as number;
      const from = this.latestStart(i);
      const to = this.earliestEnd(i);
      if (from < to && (presence < 0 || store.holds(presence))) {
        partStart[i] = from;
        partEnd[i] = to;
        parts++;
      } else {
        partStart[i] = FAR;
        partEnd[i] = FAR;
      }
    }
    this.segments = 0;
    if (parts === 0) return true;
    insertionSort(byStart, partStart);
    insertionSort(byEnd, partEnd);
    let a = 0;
    let b = 0;
    let height = 0;
    let segments = 0;
    let highest = 0;
    let highestAt = 0;
    while (b < parts) {
      const nextStart = a < parts ? (partStart[byStart[a] as number] as number) : FAR;
      const nextEnd = partEnd[byEnd[b] as number] as number;
      const time = nextStart < nextEnd ? nextStart : nextEnd;
      while (b < parts && (partEnd[byEnd[b] as number] as number) === time)
        height -= demand[byEnd[b++] as number] as number;
      while (a < parts && (partStart[byStart[a] as number] as number) === time)
        height += demand[byStart[a++] as number] as number;
      segmentTime[segments] = time;
      segmentHeight[segments] = height;
      if (height > highest) {
        highest = height;
        highestAt = segments;
      }
      segments++;
    }
    this.segments = segments;
    if (highest > this.capacity) {
      const from = segmentTime[highestAt] as number;
      const to = segmentTime[highestAt + 1] as number;
      store.beginConflict(this.constraint, this.label);
      const u = (from + to - 1) >> 1;
      const record = this.recordCover(EXCLUDE, -1, from, to, highest - this.capacity - 1);
      this.emitCover(record + 1, u, null);
      return false;
    }
    return true;
  }

  private filter(i: number): boolean {
    const { segmentTime, segmentHeight, capacity } = this;
    const store = this.kernel.store;
    const presence = this.presence[i] as number;
    const demand = this.demand[i] as number;
    if (demand === 0) return true;
    const isOpen = presence >= 0 && !store.holds(presence);
    if (isOpen && store.fails(presence)) return true;
    const limit = capacity - demand;
    let start = this.earliestStart(i);
    const latest = this.latestStart(i);
    let end = this.earliestEnd(i);
    if (isOpen && !this.isConditional[i]) return this.excludeIfForced(i, latest, end, limit);
    if (end <= start) return true;
    const segments = this.segments;
    if (start < latest) {
      // Push the start past every segment that the member would meet too high.
      for (let x = this.firstSegmentEndingAfter(start); x < segments - 1; x++) {
        const from = segmentTime[x] as number;
        if (from >= end || start >= latest) break;
        if ((segmentHeight[x] as number) <= limit) continue;
        const to = segmentTime[x + 1] as number;
        if ((this.partStart[i] as number) <= from && (this.partEnd[i] as number) >= to) continue;
        // Its own part may begin inside this segment only where the segment ends, since parts delimit segments.
        let moved = false;
        while (start < to && end > from) {
          const u = Math.min(to - 1, end - 1);
          if (u + 1 <= start) break;
          const record = this.recordCover(PUSH_START, i, from, to, (segmentHeight[x] as number) - limit - 1);
          if (
            !store.set(
              2 * (this.startVariable[i] as number),
              u + 1 - (this.startOffset[i] as number),
              (record << 2) | REASON_RECORD,
            )
          ) {
            return false;
          }
          if (presence >= 0 && store.fails(presence)) return true;
          const length = end - start;
          start = u + 1;
          end = Math.max(this.earliestEnd(i), this.startVariable[i] === this.endVariable[i] ? start + length : end);
          moved = true;
          if (start > latest) return true;
        }
        if (moved && end <= start) return true;
      }
    }
    let finish = this.latestEnd(i);
    let begin = this.latestStart(i);
    if (this.earliestEnd(i) < finish) {
      for (let x = this.lastSegmentStartingBefore(finish); x >= 0; x--) {
        const to = segmentTime[x + 1] as number;
        if (to <= begin) break;
        if ((segmentHeight[x] as number) <= limit) continue;
        const from = segmentTime[x] as number;
        if ((this.partStart[i] as number) <= from && (this.partEnd[i] as number) >= to) continue;
        while (finish > from && begin < to) {
          const u = Math.max(from, begin);
          if (u >= finish) break;
          const record = this.recordCover(PUSH_END, i, from, to, (segmentHeight[x] as number) - limit - 1);
          if (
            !store.set(
              2 * (this.endVariable[i] as number) + 1,
              (this.endOffset[i] as number) - u,
              (record << 2) | REASON_RECORD,
            )
          ) {
            return false;
          }
          if (presence >= 0 && store.fails(presence)) return true;
          const length = finish - begin;
          finish = u;
          begin = Math.min(
            this.latestStart(i),
            this.startVariable[i] === this.endVariable[i] ? finish - length : begin,
          );
          if (finish < this.earliestEnd(i)) return true;
        }
      }
    }
    return true;
  }

  /** A member whose times are not its own: it can only be told that it must be absent. */
  private excludeIfForced(i: number, from: number, to: number, limit: number): boolean {
    const { segmentTime, segmentHeight } = this;
    const store = this.kernel.store;
    for (let x = 0; x < this.segments - 1; x++) {
      const a = Math.max(from, segmentTime[x] as number);
      const b = Math.min(to, segmentTime[x + 1] as number);
      if (a >= b || (segmentHeight[x] as number) <= limit) continue;
      const record = this.recordCover(EXCLUDE, i, a, b, (segmentHeight[x] as number) - limit - 1);
      const presence = this.presence[i] as number;
      return store.set(presence ^ 1, presence & 1, (record << 2) | REASON_RECORD);
    }
    return true;
  }

  private firstSegmentEndingAfter(time: number): number {
    let low = 0;
    let high = this.segments - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.segmentTime[middle + 1] as number) > time) high = middle;
      else low = middle + 1;
    }
    return low;
  }
  private lastSegmentStartingBefore(time: number): number {
    let low = -1;
    let high = this.segments - 2;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.segmentTime[middle] as number) < time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Record the members whose compulsory part covers [from, to), without those that `surplus` can spare. */
  private recordCover(kind: number, member: number, from: number, to: number, surplus: number): number {
    const store = this.kernel.store;
    const record = store.openRecord(6 + this.n);
    let count = 0;
    let spare = surplus;
    // The longer ago a member became compulsory the cheaper it is to keep; so the newest are left out first.
    for (let pass = 0; pass < 2; pass++) {
      for (let i = 0; i < this.n; i++) {
        if (i === member || (this.partStart[i] as number) > from || (this.partEnd[i] as number) < to) continue;
        const isNew = this.isAtTopLevel(i);
        if (isNew !== (pass === 0)) continue;
        const demand = this.demand[i] as number;
        if (demand === 0) continue;
        if (demand <= spare) {
          spare -= demand;
          continue;
        }
        store.records[record + 6 + count++] = i;
      }
    }
    const records = store.records;
    records[record] = this.id;
    records[record + 1] = kind;
    records[record + 2] = member;
    records[record + 3] = from;
    records[record + 4] = to;
    records[record + 5] = count;
    store.recordsTop = record + 6 + count;
    return record;
  }

  private isAtTopLevel(i: number): boolean {
    const store = this.kernel.store;
    const since = store.level === 0 ? 0 : (store.levelStart[store.level] as number);
    return (
      (store.head[2 * (this.startVariable[i] as number) + 1] as number) >= since ||
      (store.head[2 * (this.endVariable[i] as number)] as number) >= since
    );
  }

  explain(record: number, side: number, bound: number, _t: number, out: Explanation): void {
    const records = this.kernel.store.records;
    const kind = records[record] as number;
    const i = records[record + 1] as number;
    const from = records[record + 2] as number;
    const to = records[record + 3] as number;
    if (kind === PUSH_START) {
      const u = Math.max(from, bound + (this.startOffset[i] as number) - 1);
      out.add(2 * (this.endVariable[i] as number), u + 1 - (this.endOffset[i] as number));
      this.emitCover(record, u, out);
    } else if (kind === PUSH_END) {
      const u = Math.min(to - 1, (this.endOffset[i] as number) - bound);
      out.add(2 * (this.startVariable[i] as number) + 1, (this.startOffset[i] as number) - u);
      this.emitCover(record, u, out);
    } else {
      void side;
      const u = (from + to - 1) >> 1;
      out.add(2 * (this.startVariable[i] as number) + 1, (this.startOffset[i] as number) - u);
      out.add(2 * (this.endVariable[i] as number), u + 1 - (this.endOffset[i] as number));
      this.emitCover(record, u, out);
    }
  }

  /** Atoms by which the recorded members all run at instant u; to the store's conflict when `out` is null. */
  private emitCover(record: number, u: number, out: Explanation | null): void {
    const store = this.kernel.store;
    const count = store.records[record + 4] as number;
    for (let x = 0; x < count; x++) {
      const j = store.records[record + 5 + x] as number;
      const startSide = 2 * (this.startVariable[j] as number) + 1;
      const startBound = (this.startOffset[j] as number) - u;
      const endSide = 2 * (this.endVariable[j] as number);
      const endBound = u + 1 - (this.endOffset[j] as number);
      const presence = this.presence[j] as number;
      if (out === null) {
        store.conflictAtom(startSide, startBound);
        store.conflictAtom(endSide, endBound);
        if (presence >= 0) store.conflictLiteral(presence);
      } else {
        out.add(startSide, startBound);
        out.add(endSide, endBound);
        if (presence >= 0) out.literal(presence);
      }
    }
  }
}

const FAR = 0x3fffffff;

function insertionSort(order: Int32Array, key: Int32Array): void {
  for (let i = 1; i < order.length; i++) {
    const item = order[i] as number;
    const value = key[item] as number;
    let j = i - 1;
    while (j >= 0 && (key[order[j] as number] as number) > value) {
      order[j + 1] = order[j] as number;
      j--;
    }
    order[j + 1] = item;
  }
}
