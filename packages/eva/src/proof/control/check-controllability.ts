/**
 * Dynamic controllability, decided exactly: can the executor, seeing only what has happened, keep every requirement whatever
 * lengths nature picks within the bounds? Back-propagation from each event that something has to wait for; a path that comes
 * back to an event still in work is a semi-reducible negative cycle, which proves that it cannot.
 *
 * Delays: who shares a lane with the end of a contingent link sees it at once, everybody else `delayS` later. The reductions
 * with a fixed delay γ: an event that must come less than γ after an end cannot depend on it; a wait for an end that is heard
 * no sooner than γ after the least length is a wait in any case. Where a wait passes over an event of another lane, the delay of
 * the other lane counts for the rest of it, which errs to the safe side; with one delay for all it is exact.
 *
 * Cubic in the number of events. @source [M14] the algorithm; [BMW18] fixed delays
 * @checked tests/reference/proof, tests/properties/proof
 */
import { EventQueue } from './event-queue.ts';
import { type Edge, LabelledGraph, originalEdges } from './labelled-graph.ts';
import type { Stnu } from './stnu.ts';

export type Controllability =
  | { readonly controllable: true; readonly strategy: readonly Wait[] }
  /** A closed chain of edges of the network whose weights, counted with the labels' bounds, add up to less than 0. */
  | { readonly controllable: false; readonly cycle: readonly Edge[]; readonly shortS: number };

/**
 * `event` comes no sooner than `waitS` after `after`, or, where `until` names a contingent link, than its end is heard of, if
 * that is sooner. Contingent links count from the end of their least length: `after` is then their start and waitS includes it.
 */
export interface Wait {
  readonly event: number;
  readonly after: number;
  readonly waitS: number;
  readonly until: number | null;
  /** With `until`: seconds after its end at which the wait is over for this event. */
  readonly heardS: number;
}

interface Frame {
  readonly source: number;
  readonly label: number;
  readonly distance: Float64Array;
  /** Edge by which the state was reached: it starts at the state's event. */
  readonly parent: (Edge | undefined)[];
  /** The state that the parent edge leads to; −1: the source. */
  readonly next: Int32Array;
  readonly settled: number[];
}

export function checkControllability(stnu: Stnu): Controllability {
  return new Propagation(stnu).decide();
}

class Propagation {
  private readonly stnu: Stnu;
  private readonly graph: LabelledGraph;
  private state: Uint8Array;
  private frames: Frame[] = [];
  private stack: { frame: Frame | null; source: number; reached: number }[] = [];
  private cycle: readonly Edge[] | null = null;
  private readonly longestDelayS: number;

  constructor(stnu: Stnu) {
    this.stnu = stnu;
    this.graph = new LabelledGraph(stnu);
    this.state = new Uint8Array(this.graph.size);
    this.longestDelayS = Math.max(0, ...stnu.contingents.map(({ delayS }) => delayS ?? 0));
  }

  decide(): Controllability {
    // Each round but the last tightens an edge, by whole seconds and not below 0: it ends.
    for (;;) {
      this.state = new Uint8Array(this.graph.size);
      this.frames = [];
      for (let event = 0; event < this.graph.size; event++) {
        if (this.isWaitedFor(event) && !this.propagate(event)) return this.refusal();
      }
      if (this.longestDelayS === 0 || !this.tightenByDelays()) break;
    }
    return { controllable: true, strategy: this.strategy() };
  }

  private isWaitedFor(event: number): boolean {
    return (this.graph.into[event] as Edge[]).some(({ weightS, kind }) => weightS < 0 || kind === 'upper');
  }

  private propagate(source: number): boolean {
    if (this.state[source] === 1) return this.close(source);
    if (this.state[source] === 2) return true;
    this.state[source] = 1;
    const entry = { frame: null as Frame | null, source, reached: -1 };
    this.stack.push(entry);
    const link = this.graph.linkOfHelper[source] as number;
    if (link >= 0 && !this.propagateUpper(source, link, entry)) return false;
    if (!this.propagateOrdinary(source, entry)) return false;
    this.stack.pop();
    this.state[source] = 2;
    return true;
  }

  private propagateOrdinary(source: number, entry: { frame: Frame | null; reached: number }): boolean {
    const frame = this.frame(source, -1, 1);
    const queue = new EventQueue();
    for (const edge of this.graph.into[source] as Edge[]) {
      if (edge.kind !== 'upper' && edge.weightS < 0) relax(frame, queue, edge, edge.from, -1, edge.weightS);
    }
    return this.run(frame, queue, entry, 1);
  }

  /**
   * Waits for the end of a contingent link. State 2·event is a path within its own lanes; 2·event + 1 one that has passed an event
   * which hears of the end later.
   */
  private propagateUpper(source: number, link: number, entry: { frame: Frame | null; reached: number }): boolean {
    const { to, delayS = 0 } = this.stnu.contingents[link] as Stnu['contingents'][number];
    const layers = delayS > 0 ? 2 : 1;
    const frame = this.frame(source, link, layers);
    entry.frame = frame;
    const upper = (this.graph.into[source] as Edge[]).find(({ kind }) => kind === 'upper') as Edge;
    if (this.isWaitedFor(to)) {
      relax(frame, new EventQueue(), upper, to * layers, -1, upper.weightS);
      entry.reached = to * layers;
      if (!this.propagate(to)) return false;
    }
    const queue = new EventQueue();
    relax(frame, queue, upper, to * layers, -1, upper.weightS);
    queue.push(upper.weightS, to * layers);
    if (layers === 2) this.seedLateHearers(frame, queue, to, delayS, upper.weightS);
    if (!this.run(frame, queue, entry, layers)) return false;
    if (layers === 2) this.waitInAnyCase(frame, source, delayS);
    return true;
  }

  /** Who must come up to the delay after an end, but hears of it only then: waits as one who must come before it is heard. */
  private seedLateHearers(frame: Frame, queue: EventQueue, end: number, delayS: number, weightS: number): void {
    const own = this.frames.find(({ source, label }) => source === end && label < 0);
    if (own === undefined) return;
    for (const event of own.settled) {
      const distance = own.distance[event] as number;
      if (distance >= 0 || distance < -delayS || !this.hearsLate(event, end)) continue;
      const edge: Edge = {
        from: event,
        to: end,
        weightS: distance,
        kind: 'ordinary',
        label: -1,
        origin: { of: 'path', path: () => pathOf(own, event) },
      };
      relax(frame, queue, edge, 2 * event + 1, 2 * end, weightS + distance);
    }
  }

  private waitInAnyCase(frame: Frame, helper: number, delayS: number): void {
    for (const at of frame.settled) {
      const distance = frame.distance[at] as number;
      if (distance >= 0 || at % 2 === 0 || !this.graph.isDecided(at >> 1)) continue;
      this.graph.addOrdinary(at >> 1, helper, Math.max(distance, -delayS), {
        of: 'path',
        path: () => pathOf(frame, at),
      });
    }
  }

  private hearsLate(event: number, end: number): boolean {
    const { lanes } = this.graph;
    if (!this.graph.isDecided(event)) return false;
    return ((lanes[event] as number) & (lanes[end] as number)) === 0;
  }

  private frame(source: number, label: number, layers: number): Frame {
    const size = this.graph.size * layers;
    const frame: Frame = {
      source,
      label,
      distance: new Float64Array(size).fill(Number.POSITIVE_INFINITY),
      parent: [],
      next: new Int32Array(size).fill(-1),
      settled: [],
    };
    this.frames.push(frame);
    return frame;
  }

  private run(
    frame: Frame,
    queue: EventQueue,
    entry: { frame: Frame | null; reached: number },
    layers: number,
  ): boolean {
    const { graph } = this;
    const end = frame.label < 0 ? -1 : (this.stnu.contingents[frame.label]?.to as number);
    entry.frame = frame;
    const done = new Uint8Array(frame.distance.length);
    while (queue.pop()) {
      const at = queue.top.item;
      const distance = queue.top.key;
      if (done[at] === 1 || distance > (frame.distance[at] as number)) continue;
      done[at] = 1;
      const event = layers === 1 ? at : at >> 1;
      if (distance >= 0) {
        if (event !== frame.source) {
          if (distance === 0) frame.settled.push(at);
          graph.addOrdinary(event, frame.source, distance, { of: 'path', path: () => pathOf(frame, at) });
        }
        continue;
      }
      frame.settled.push(at);
      if (this.isWaitedFor(event)) {
        entry.reached = at;
        if (!this.propagate(event)) return false;
        entry.frame = frame;
      }
      for (const edge of graph.into[event] as Edge[]) {
        if (edge.weightS < 0 || edge.kind === 'upper') continue;
        if (edge.kind === 'lower' && edge.label === frame.label) continue;
        const late = layers === 2 && (at % 2 === 1 || this.hearsLate(edge.from, end)) ? 1 : 0;
        relax(frame, queue, edge, edge.from * layers + late, at, distance + edge.weightS);
      }
    }
    return true;
  }

  /** The path has come back to an event in work: the frames above it and the path to it are the cycle. */
  private close(source: number): false {
    const from = this.stack.findIndex((one) => one.source === source);
    const parts = this.stack.slice(from).toReversed();
    this.cycle = parts.flatMap(({ frame, reached }) => (frame === null ? [] : pathOf(frame, reached)));
    return false;
  }

  private refusal(): Controllability {
    const cycle = originalEdges(this.cycle ?? []);
    const shortS = -cycle.reduce((sum, { weightS }) => sum + weightS, 0);
    return { controllable: false, cycle, shortS };
  }

  /**
   * Who must follow an end by less than the time that it takes to hear of it must follow the least length. True where that has
   * tightened the network.
   */
  private tightenByDelays(): boolean {
    const found: { from: number; to: number; weightS: number; path: readonly Edge[] }[] = [];
    for (let target = 0; target < this.graph.size; target++) {
      if (!this.graph.isDecided(target)) continue;
      const frame = this.frame(target, -1, 1);
      const queue = new EventQueue();
      const relaxAll = (at: number, next: number, distance: number): void => {
        for (const edge of this.graph.into[at] as Edge[]) {
          const far = distance + edge.weightS;
          if (edge.kind === 'upper' || edge.weightS < 0 || far >= this.longestDelayS) continue;
          relax(frame, queue, edge, edge.from, next, far);
        }
      };
      relaxAll(target, -1, 0);
      while (queue.pop()) {
        const { key, item } = queue.top;
        if (key > (frame.distance[item] as number) || item === target) continue;
        const link = this.graph.linkOfEnd[item] as number;
        const delayS = link < 0 ? 0 : (this.stnu.contingents[link]?.delayS ?? 0);
        if (key < delayS && this.hearsLate(target, item)) {
          const helper = this.graph.helperOf[link] as number;
          const lower = (this.graph.into[item] as Edge[]).find(({ kind }) => kind === 'lower') as Edge;
          found.push({ from: helper, to: target, weightS: key, path: [lower, ...pathOf(frame, item)] });
        }
        relaxAll(item, item, key);
      }
      this.frames.pop();
    }
    let tightened = false;
    for (const { from, to, weightS, path } of found) {
      if (from === to) continue;
      if (this.graph.addOrdinary(from, to, weightS, { of: 'path', path: () => path })) tightened = true;
    }
    return tightened;
  }

  private strategy(): readonly Wait[] {
    const waits: Wait[] = [];
    for (const frame of this.frames) {
      const link = this.graph.linkOfHelper[frame.source] as number;
      const start = link < 0 ? frame.source : (this.stnu.contingents[link]?.from as number);
      const leastS = link < 0 ? 0 : (this.stnu.contingents[link]?.leastS as number);
      const { delayS = 0 } = this.stnu.contingents[frame.label] ?? {};
      const layers = frame.label >= 0 && delayS > 0 ? 2 : 1;
      for (const at of frame.settled) {
        const event = layers === 1 ? at : at >> 1;
        if (event >= this.graph.events || (this.graph.linkOfEnd[event] as number) >= 0) continue;
        waits.push({
          event,
          after: start,
          waitS: leastS - (frame.distance[at] as number),
          until: frame.label < 0 ? null : frame.label,
          heardS: layers === 2 && at % 2 === 1 ? delayS : 0,
        });
      }
    }
    return waits;
  }
}

function relax(frame: Frame, queue: EventQueue, edge: Edge, at: number, next: number, distance: number): void {
  if (distance >= (frame.distance[at] as number)) return;
  frame.distance[at] = distance;
  frame.parent[at] = edge;
  frame.next[at] = next;
  queue.push(distance, at);
}

function pathOf(frame: Frame, at: number): readonly Edge[] {
  const path: Edge[] = [];
  for (let state = at; state >= 0; state = frame.next[state] as number) {
    const edge = frame.parent[state];
    if (edge === undefined) break;
    path.push(edge);
  }
  return path;
}
