import type { Kernel, Term } from '../engine/kernel.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';
import { WalkLabels, type WalkGraph, type WalkMemory, reversed } from './walk-labels.ts';

/** Labels one look may make at first, and at most; members that can be remembered. */
const FIRST_LIMIT = 200_000;
const LAST_LIMIT = 3_000_000;
const MOST_REMEMBERED = 62;
const ROUNDS = 200;

/** What a lane contributes to an objective level. */
export interface RouteWorth {
  readonly graph: WalkGraph;
  /** Per member its presence literal, or -1. */
  readonly presence: readonly number[];
  /** The level's variable without constant. */
  readonly objective: Term;
  /** Least that all other terms of the level come to. */
  readonly elsewhere: number;
  readonly constraint: number;
  /** Take up the order of a walk that passes nothing twice. */
  readonly suggest: (walk: readonly number[]) => void;
}

/**
 * objective ≥ elsewhere − what a walk through a lane can be worth. A walk keeps to steps and times of the members, and may pass a
 * member again once it has forgotten it; what is passed twice by a walk that is worth enough is remembered from then on, until
 * there is no such walk, or one that passes nothing twice, which is suggested as a plan. Works near the root alone.
 * @source [RIGHINI-SALANI-2009] [ROBERTI-MINGOZZI-2014]
 */
export class RouteWorthPropagator extends ReasonedPropagator {
  private readonly lane: RouteWorth;
  private readonly backwards: WalkGraph;
  private readonly memory: WalkMemory;
  private remembered = 0;
  private readonly isOut: Uint8Array;
  private limit = FIRST_LIMIT;
  /** Worth up to which looking again is of no use, as long as no more members are out than then. */
  private futile = Number.NEGATIVE_INFINITY;
  private outThen = -1;

  constructor(kernel: Kernel, lane: RouteWorth) {
    super(kernel, -1, `worth/${lane.constraint}`, 3);
    this.lane = lane;
    const { size } = lane.graph;
    this.backwards = reversed(lane.graph);
    this.isOut = new Uint8Array(size);
    this.memory = {
      low: new Int32Array(size),
      high: new Int32Array(size),
      ownLow: new Int32Array(size),
      ownHigh: new Int32Array(size),
    };
    const literals = lane.presence.filter((literal) => literal >= 0);
    kernel.post(this, sidesOf([lane.objective], literals));
  }

  propagate(): boolean {
    const { lane, isOut } = this;
    const { store } = this.kernel;
    if (store.level > 1) return true;
    const needed = lane.elsewhere - this.upper(lane.objective);
    let out = 0;
    lane.presence.forEach((literal, i) => {
      isOut[i] = literal >= 0 && store.fails(literal) ? 1 : 0;
      out += isOut[i];
    });
    if (needed <= this.futile && out <= this.outThen) return true;
    if (this.hasWalk(needed)) {
      this.futile = needed;
      this.outThen = out;
      return true;
    }
    this.noPremises();
    lane.presence.forEach((literal, i) => {
      if (isOut[i] !== 0) this.premiseLiteral(literal ^ 1);
    });
    this.argue(this.memoryArguments());
    return this.raiseAtLeast(lane.objective, this.upper(lane.objective) + 1);
  }

  /** Whether a walk worth this much is left, or none could be excluded within the limit. */
  private hasWalk(needed: number): boolean {
    const { lane, memory, isOut } = this;
    const none = new Int32Array(lane.graph.size);
    let backward = new WalkLabels(this.backwards);
    const forgetful = { low: none, high: none, ownLow: none, ownHigh: none };
    if (!backward.run(forgetful, isOut, needed, null, this.limit)) return true;
    for (let round = 0; round < ROUNDS; round++) {
      const forward = new WalkLabels(lane.graph);
      if (!forward.run(memory, isOut, needed, backward, this.limit)) break;
      const walks = forward.walks(needed, 20);
      const [best] = walks;
      if (best === undefined) return false;
      if (!hasRepeats(best)) {
        lane.suggest(best);
        return true;
      }
      if (!walks.map((walk) => this.remember(walk)).includes(true)) return true;
      const next = new WalkLabels(this.backwards);
      if (!next.run(memory, isOut, needed, forward, this.limit)) break;
      backward = next;
    }
    this.limit = Math.min(LAST_LIMIT, 2 * this.limit);
    return true;
  }

  /** Remember what the walk passes twice all the way between. False: there is no room for more. */
  private remember(walk: readonly number[]): boolean {
    const { memory } = this;
    const lastAt = new Map<number, number>();
    let isMore = false;
    walk.forEach((i, at) => {
      const before = lastAt.get(i);
      lastAt.set(i, at);
      if (before === undefined) return;
      if (memory.ownLow[i] === 0 && memory.ownHigh[i] === 0) {
        if (this.remembered >= MOST_REMEMBERED) return;
        const bit = this.remembered++;
        if (bit < 31) memory.ownLow[i] = 1 << bit;
        else memory.ownHigh[i] = 1 << (bit - 31);
      }
      isMore = true;
      for (let k = before + 1; k < at; k++) {
        const between = walk[k] as number;
        (memory.low[between] as number) |= memory.ownLow[i] as number;
        (memory.high[between] as number) |= memory.ownHigh[i] as number;
      }
    });
    return isMore;
  }

  /** Per remembered member its number, then how many remember it and which. */
  private memoryArguments(): number[] {
    const { low, high, ownLow, ownHigh } = this.memory;
    const values: number[] = [];
    for (let i = 0; i < low.length; i++) {
      if (ownLow[i] === 0 && ownHigh[i] === 0) continue;
      const who: number[] = [];
      for (let j = 0; j < low.length; j++) {
        const both = ((low[j] as number) & (ownLow[i] as number)) | ((high[j] as number) & (ownHigh[i] as number));
        if (both !== 0) who.push(j);
      }
      values.push(i, who.length, ...who);
    }
    return values;
  }
}

function hasRepeats(walk: readonly number[]): boolean {
  return new Set(walk).size < walk.length;
}
