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

/** Which members a walk remembers having passed once it is at a member: a row of bits a member. */
export class WalkMemory {
  /** Words a row. */
  readonly words: number;
  readonly rows: Int32Array;

  constructor(size: number) {
    this.words = (size + 31) >> 5;
    this.rows = new Int32Array(size * this.words);
  }

  remembers(at: number, passed: number): boolean {
    return (((this.rows[at * this.words + (passed >> 5)] as number) >> (passed & 31)) & 1) === 1;
  }
  /** False: it did so before. */
  remember(at: number, passed: number): boolean {
    if (this.remembers(at, passed)) return false;
    (this.rows[at * this.words + (passed >> 5)] as number) |= 1 << (passed & 31);
    return true;
  }
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
  /** Labels looked at and compared so far: what a run costs. */
  work = 0;
  private count = 0;
  private readonly words: number;
  private node = new Int32Array(1024);
  private time = new Int32Array(1024);
  private worth = new Int32Array(1024);
  private parent = new Int32Array(1024);
  /** Per label a row of members it remembers. */
  private passed: Int32Array<ArrayBuffer>;
  /** Row of the label that is being made. */
  private readonly next: Int32Array;
  private readonly heap: number[] = [];
  /** Per member its settled labels, worthiest first. */
  private readonly settled: number[][];
  /** Per member: end times of settled labels, and the best worth up to each. */
  private readonly frontTime: number[][];
  private readonly frontWorth: number[][];

  constructor(graph: WalkGraph) {
    this.graph = graph;
    this.words = (graph.size + 31) >> 5;
    this.passed = new Int32Array(1024 * this.words);
    this.next = new Int32Array(this.words);
    this.settled = Array.from({ length: graph.size }, () => []);
    this.frontTime = Array.from({ length: graph.size }, () => []);
    this.frontWorth = Array.from({ length: graph.size }, () => []);
  }

  /** False: more work than `limit`. `onward`: labels of the reversed lane, or null for no look ahead. */
  run(memory: WalkMemory, isOut: Uint8Array, needed: number, onward: WalkLabels | null, limit: number): boolean {
    const { graph, heap, words } = this;
    const { first, last, size, startMin, endMax, duration, worth, step } = graph;
    // What is passed once comes to no more than this: circles that take no time end here.
    let most = 0;
    for (let i = 0; i < size; i++) if (isOut[i] === 0) most += worth[i] as number;
    this.add(first, (startMin[first] as number) + (duration[first] as number), worth[first] as number, -1);
    this.push(0);
    while (heap.length > 0) {
      const label = this.pop();
      const i = this.node[label] as number;
      const s = this.worth[label] as number;
      const row = label * words;
      if (this.isDominated(i, s, this.passed, row)) continue;
      this.settle(label);
      if (i === last) continue;
      const leaves = this.time[label] as number;
      this.work += size;
      for (let j = 0; j < size; j++) {
        const way = step[i * size + j] as number;
        if (j === i || j === first || way >= FORBIDDEN || isOut[j] !== 0) continue;
        if ((((this.passed[row + (j >> 5)] as number) >> (j & 31)) & 1) === 1) continue;
        const end = Math.max(leaves + way, startMin[j] as number) + (duration[j] as number);
        if (end > (endMax[j] as number)) continue;
        const sum = Math.min(most, s + (worth[j] as number));
        if (onward !== null && sum + onward.bestOnward(j, end) < needed) continue;
        this.carry(memory, row, i, j);
        if (this.isDominated(j, sum, this.next, 0)) continue;
        this.push(this.add(j, end, sum, label));
      }
      if (this.work > limit) return false;
    }
    return true;
  }

  /** What a walk with a row that leaves i remembers at j. */
  private carry(memory: WalkMemory, row: number, i: number, j: number): void {
    const { next, words, passed } = this;
    for (let w = 0; w < words; w++) {
      const own = w === i >> 5 ? 1 << (i & 31) : 0;
      next[w] = ((passed[row + w] as number) | own) & (memory.rows[j * words + w] as number);
    }
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

  /** Walks to the last member, worthiest first, as members in their order. */
  walks(most: number): { readonly worth: number; readonly members: readonly number[] }[] {
    return (this.settled[this.graph.last] as number[]).slice(0, most).map((end) => {
      const members: number[] = [];
      for (let label = end; label >= 0; label = this.parent[label] as number) members.push(this.node[label] as number);
      return { worth: this.worth[end] as number, members: members.reverse() };
    });
  }

  /** Takes over the row that is being made. */
  private add(node: number, time: number, worth: number, parent: number): number {
    const label = this.count++;
    if (label >= this.node.length) this.grow();
    this.node[label] = node;
    this.time[label] = time;
    this.worth[label] = worth;
    this.parent[label] = parent;
    for (let w = 0; w < this.words; w++) this.passed[label * this.words + w] = this.next[w] as number;
    return label;
  }
  private grow(): void {
    this.node = doubled(this.node);
    this.time = doubled(this.time);
    this.worth = doubled(this.worth);
    this.parent = doubled(this.parent);
    this.passed = doubled(this.passed);
  }

  /** All settled labels are no later. */
  private isDominated(i: number, worth: number, rows: Int32Array, row: number): boolean {
    const list = this.settled[i] as number[];
    const { words, passed } = this;
    for (let x = 0; x < list.length; x++) {
      const other = list[x] as number;
      if ((this.worth[other] as number) < worth) {
        this.work += x;
        return false;
      }
      let w = 0;
      while (w < words && ((passed[other * words + w] as number) & ~(rows[row + w] as number)) === 0) w++;
      if (w === words) {
        this.work += x;
        return true;
      }
    }
    this.work += list.length;
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

function doubled(old: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const grown = new Int32Array(2 * old.length);
  grown.set(old);
  return grown;
}
