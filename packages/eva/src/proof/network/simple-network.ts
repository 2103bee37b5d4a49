/**
 * Distances in a network whose links are all kept: what follows from it in every execution, and the earliest execution there is.
 * Contingent links count with their bounds, as lengths that some execution has.
 */
import { EventQueue } from '../control/event-queue.ts';
import type { TemporalNetwork } from './temporal-network.ts';

/** to ≤ from + weightS. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly weightS: number;
}

export class SimpleNetwork {
  readonly consistent: boolean;
  private readonly size: number;
  private readonly outOf: Arc[][];
  /** Feasible times; also the potential that makes all arcs non-negative. */
  private readonly potential: Float64Array;
  private readonly known = new Map<number, Float64Array>();

  constructor(size: number, arcs: readonly Arc[]) {
    this.size = size;
    this.outOf = Array.from({ length: size }, () => []);
    for (const arc of arcs) (this.outOf[arc.from] as Arc[]).push(arc);
    this.potential = new Float64Array(size);
    this.consistent = this.settle();
  }

  /**
   * Greatest value of (to − from) that an execution can have; Infinity: no bound; −Infinity: there is no execution at all.
   */
  most(from: number, to: number): number {
    if (!this.consistent) return Number.NEGATIVE_INFINITY;
    let row = this.known.get(from);
    if (row === undefined) {
      row = this.row(from);
      this.known.set(from, row);
    }
    return row[to] as number;
  }

  /** Least value of (to − from) that an execution can have; −Infinity: no bound. */
  least(from: number, to: number): number {
    return -this.most(to, from);
  }

  /** Bellman–Ford from a source before everything; false on a negative cycle. */
  private settle(): boolean {
    const queue: number[] = Array.from({ length: this.size }, (_, event) => event);
    const queued = new Uint8Array(this.size).fill(1);
    const rounds = new Int32Array(this.size);
    for (let head = 0; head < queue.length; head++) {
      const event = queue[head] as number;
      queued[event] = 0;
      for (const { to, weightS } of this.outOf[event] as Arc[]) {
        const reached = (this.potential[event] as number) + weightS;
        if (reached >= (this.potential[to] as number)) continue;
        this.potential[to] = reached;
        if (queued[to] === 1) continue;
        queued[to] = 1;
        const round = (rounds[to] as number) + 1;
        rounds[to] = round;
        if (round > this.size) return false;
        queue.push(to);
      }
    }
    return true;
  }

  private row(from: number): Float64Array {
    const distance = new Float64Array(this.size).fill(Number.POSITIVE_INFINITY);
    const queue = new EventQueue();
    distance[from] = 0;
    queue.push(0, from);
    while (queue.pop()) {
      const { key, item } = queue.top;
      if (key > (distance[item] as number)) continue;
      for (const { to, weightS } of this.outOf[item] as Arc[]) {
        const reached = key + weightS + (this.potential[item] as number) - (this.potential[to] as number);
        if (reached >= (distance[to] as number)) continue;
        distance[to] = reached;
        queue.push(reached, to);
      }
    }
    for (let to = 0; to < this.size; to++) {
      distance[to] = (distance[to] as number) - (this.potential[from] as number) + (this.potential[to] as number);
    }
    return distance;
  }
}

/** `most` bounds left out where `without` says so: what the order alone gives. */
export function arcsOf(
  network: Pick<TemporalNetwork, 'requirements' | 'contingents'>,
  isKept: (kind: TemporalNetwork['requirements'][number]['kind']) => boolean = () => true,
): Arc[] {
  const arcs: Arc[] = [];
  for (const { from, to, leastS, mostS, kind } of network.requirements) {
    if (mostS !== null && isKept(kind)) arcs.push({ from, to, weightS: mostS });
    if (leastS !== null) arcs.push({ from: to, to: from, weightS: -leastS });
  }
  for (const { from, to, leastS, mostS } of network.contingents) {
    arcs.push({ from, to, weightS: mostS }, { from: to, to: from, weightS: -leastS });
  }
  return arcs;
}
