import { FORBIDDEN } from '../model/model.ts';

/** Members of a lane as places to pass: times in which each may be done, what each is worth, steps between them. */
export interface WalkGraph {
  readonly size: number;
  readonly first: number;
  readonly last: number;
  readonly startMin: Int32Array;
  readonly endMax: Int32Array;
  readonly duration: Int32Array;
  readonly worth: Int32Array;
  /** Row-major; FORBIDDEN where a step is not allowed. */
  readonly step: Int32Array;
  /** Later than any end. */
  readonly horizon: number;
}

/** Which members a walk remembers having passed once it is at a member, as bits of two words. */
export interface WalkMemory {
  readonly low: Int32Array;
  readonly high: Int32Array;
  /** Per member its own bit in the words; 0 in both when nobody remembers it. */
  readonly ownLow: Int32Array;
  readonly ownHigh: Int32Array;
}

/** The same lane backwards in time. */
export function reversed(graph: WalkGraph): WalkGraph {
  const { size, horizon } = graph;
  const step = new Int32Array(size * size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) step[j * size + i] = graph.step[i * size + j] as number;
  return {
    ...graph,
    first: graph.last,
    last: graph.first,
    startMin: graph.endMax.map((t) => horizon - t),
    endMax: graph.startMin.map((t) => horizon - t),
    step,
  };
}

/**
 * Labels (end time, worth so far, memory) of all walks from the first member, in order of time; one that another one equals or
 * betters in all three is left out, and so is one that cannot reach the worth asked for with the best way on.
 * @source [RIGHINI-SALANI-2009]
 */
export class WalkLabels {
  readonly graph: WalkGraph;
  count = 0;
  private node = new Int32Array(1024);
  private time = new Int32Array(1024);
  private worth = new Int32Array(1024);
  private low = new Int32Array(1024);
  private high = new Int32Array(1024);
  private parent = new Int32Array(1024);
  private readonly heap: number[] = [];
  /** Per member its settled labels, worthiest first. */
  private readonly settled: number[][];
  /** Per member: end times of settled labels, and the best worth up to each. */
  private readonly frontTime: number[][];
  private readonly frontWorth: number[][];

  constructor(graph: WalkGraph) {
    this.graph = graph;
    this.settled = Array.from({ length: graph.size }, () => []);
    this.frontTime = Array.from({ length: graph.size }, () => []);
    this.frontWorth = Array.from({ length: graph.size }, () => []);
  }

  /** False: more than `limit` labels. `onward`: labels of the reversed lane, or null for no look ahead. */
  run(memory: WalkMemory, isOut: Uint8Array, needed: number, onward: WalkLabels | null, limit: number): boolean {
    const { graph, heap } = this;
    const { first, last, size, startMin, endMax, duration, worth, step } = graph;
    const begin = (startMin[first] as number) + (duration[first] as number);
    this.add(first, begin, worth[first] as number, memory.ownLow[first] as number, memory.ownHigh[first] as number, -1);
    this.push(0);
    while (heap.length > 0) {
      const label = this.pop();
      const i = this.node[label] as number;
      const s = this.worth[label] as number;
      const lo = this.low[label] as number;
      const hi = this.high[label] as number;
      if (this.isDominated(i, s, lo, hi)) continue;
      this.settle(label);
      if (i === last) continue;
      const leaves = this.time[label] as number;
      for (let j = 0; j < size; j++) {
        const way = step[i * size + j] as number;
        if (j === i || j === first || way >= FORBIDDEN || isOut[j] !== 0) continue;
        if ((lo & (memory.ownLow[j] as number)) !== 0 || (hi & (memory.ownHigh[j] as number)) !== 0) continue;
        const end = Math.max(leaves + way, startMin[j] as number) + (duration[j] as number);
        if (end > (endMax[j] as number)) continue;
        const sum = s + (worth[j] as number);
        if (onward !== null && sum + onward.bestOnward(j, end) < needed) continue;
        const nextLow = (lo & (memory.low[j] as number)) | (memory.ownLow[j] as number);
        const nextHigh = (hi & (memory.high[j] as number)) | (memory.ownHigh[j] as number);
        if (this.isDominated(j, sum, nextLow, nextHigh)) continue;
        if (this.count >= limit) return false;
        this.push(this.add(j, end, sum, nextLow, nextHigh, label));
      }
    }
    return true;
  }

  /** Best worth after member i when a walk the other way ends it at `end`; what i itself is worth left out. */
  bestOnward(i: number, end: number): number {
    const { horizon, duration, worth } = this.graph;
    const latest = horizon - end + (duration[i] as number);
    const times = this.frontTime[i] as number[];
    let from = 0;
    let to = times.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((times[middle] as number) <= latest) from = middle + 1;
      else to = middle;
    }
    return from === 0 ? -FORBIDDEN : ((this.frontWorth[i] as number[])[from - 1] as number) - (worth[i] as number);
  }

  /** Walks to the last member that are worth at least this much, worthiest first, as members in their order. */
  walks(needed: number, most: number): number[][] {
    const ends = (this.settled[this.graph.last] as number[]).filter((label) => (this.worth[label] as number) >= needed);
    return ends.slice(0, most).map((end) => {
      const walk: number[] = [];
      for (let label = end; label >= 0; label = this.parent[label] as number) walk.push(this.node[label] as number);
      return walk.reverse();
    });
  }

  private add(node: number, time: number, worth: number, low: number, high: number, parent: number): number {
    const label = this.count++;
    if (label >= this.node.length) this.grow();
    this.node[label] = node;
    this.time[label] = time;
    this.worth[label] = worth;
    this.low[label] = low;
    this.high[label] = high;
    this.parent[label] = parent;
    return label;
  }
  private grow(): void {
    const doubled = (old: Int32Array<ArrayBuffer>) => {
      const grown = new Int32Array(2 * old.length);
      grown.set(old);
      return grown;
    };
    this.node = doubled(this.node);
    this.time = doubled(this.time);
    this.worth = doubled(this.worth);
    this.low = doubled(this.low);
    this.high = doubled(this.high);
    this.parent = doubled(this.parent);
  }

  /** All settled labels are no later. */
  private isDominated(i: number, worth: number, low: number, high: number): boolean {
    for (const other of this.settled[i] as number[]) {
      if ((this.worth[other] as number) < worth) return false;
      if (((this.low[other] as number) & ~low) === 0 && ((this.high[other] as number) & ~high) === 0) return true;
    }
    return false;
  }

  private settle(label: number): void {
    const i = this.node[label] as number;
    const list = this.settled[i] as number[];
    const worth = this.worth[label] as number;
    let from = 0;
    let to = list.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((this.worth[list[middle] as number] as number) >= worth) from = middle + 1;
      else to = middle;
    }
    list.splice(from, 0, label);
    const worths = this.frontWorth[i] as number[];
    if (worths.length > 0 && (worths.at(-1) as number) >= worth) return;
    worths.push(worth);
    (this.frontTime[i] as number[]).push(this.time[label] as number);
  }

  /** Earlier first; of one time the worthier first. */
  private isSooner(a: number, b: number): boolean {
    const difference = (this.time[a] as number) - (this.time[b] as number);
    return difference < 0 || (difference === 0 && (this.worth[a] as number) > (this.worth[b] as number));
  }
  private push(label: number): void {
    const { heap } = this;
    let at = heap.length;
    heap.push(label);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!this.isSooner(label, heap[up] as number)) break;
      heap[at] = heap[up] as number;
      at = up;
    }
    heap[at] = label;
  }
  private pop(): number {
    const { heap } = this;
    const top = heap[0] as number;
    const moved = heap.pop() as number;
    const n = heap.length;
    if (n === 0) return top;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= n) break;
      if (down + 1 < n && this.isSooner(heap[down + 1] as number, heap[down] as number)) down++;
      if (!this.isSooner(heap[down] as number, moved)) break;
      heap[at] = heap[down] as number;
      at = down;
    }
    heap[at] = moved;
    return top;
  }
}
