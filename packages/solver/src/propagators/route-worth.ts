import type { Kernel, Term } from '../engine/kernel.ts';
import { FORBIDDEN } from '../model/model.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';
import { WalkLabels, type WalkGraph, WalkMemory, reversed } from './walk-labels.ts';

/** Comparisons of labels that one look may cost at first, and at most. */
const FIRST_LIMIT = 3_000_000;
const LAST_LIMIT = 100_000_000;
/** So much of that costs about as much as running one propagator. */
const WORK_PER_PROPAGATION = 300;
/** What is asked of a walk falls by this part of what is left at a time, as a power of two. */
const STEP = 2;
/** Members that each member remembers from the start: those from which it is soonest reached and left. */
const NEIGHBOURS = 4;

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
 * there is no such walk, or one that passes nothing twice, which is suggested as a plan. What is asked of a walk falls from what
 * forgetful ones are worth to what would better the incumbent, since little is worth much. Works near the root alone.
 * @source [RIGHINI-SALANI-2009] [ROBERTI-MINGOZZI-2014]
 */
export class RouteWorthPropagator extends ReasonedPropagator {
  private readonly lane: RouteWorth;
  private readonly backwards: WalkGraph;
  private readonly memory: WalkMemory;
  private readonly forgetful: WalkMemory;
  private readonly isOut: Uint8Array;
  private limit = FIRST_LIMIT;
  /** Propagations after which the next look is due, so that looking takes about as long as searching. */
  private dueAt = 0;
  /** Worth up to which looking again is of no use, as long as no more members are out than then. */
  private futile = Number.NEGATIVE_INFINITY;
  private outThen = -1;
  /** No walk is worth so much as long as these are out. */
  private ceiling = Number.POSITIVE_INFINITY;
  private readonly outAtCeiling: Uint8Array;
  /** Labels backwards of walks that forget at once, and which were out then. */
  private base: WalkLabels | null = null;
  private readonly outAtBase: Uint8Array;
  /** Worthiest walk suggested so far. */
  private suggested = 0;

  constructor(kernel: Kernel, lane: RouteWorth) {
    super(kernel, -1, `worth/${lane.constraint}`, 3);
    this.lane = lane;
    const { size } = lane.graph;
    this.backwards = reversed(lane.graph);
    this.isOut = new Uint8Array(size);
    this.outAtCeiling = new Uint8Array(size);
    this.outAtBase = new Uint8Array(size);
    this.memory = new WalkMemory(size);
    this.forgetful = new WalkMemory(size);
    rememberNeighbours(this.memory, lane.graph);
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
    // What was found with fewer out still holds.
    if (this.outAtCeiling.some((was, i) => was > (isOut[i] as number))) this.ceiling = Number.POSITIVE_INFINITY;
    const tooMuch = this.ceiling <= needed ? this.ceiling : this.leastOutOfReach(needed);
    if (tooMuch < this.ceiling) {
      this.ceiling = tooMuch;
      this.outAtCeiling.set(isOut);
    }
    const bound = lane.elsewhere - tooMuch + 1;
    if (bound <= this.lower(lane.objective)) return true;
    this.noPremises();
    lane.presence.forEach((literal, i) => {
      if (isOut[i] !== 0) this.premiseLiteral(literal ^ 1);
    });
    this.argueMemory();
    return this.raiseAtLeast(lane.objective, Math.min(bound, this.upper(lane.objective) + 1));
  }

  /** A worth that no walk reaches, not below `needed`, and as little as can be found within the limit; infinite: none was found. */
  private leastOutOfReach(needed: number): number {
    if (this.kernel.propagations < this.dueAt) return this.ceiling;
    const { lane, isOut } = this;
    const base = this.forgetfulLabels();
    if (base === null) return this.endEarly(Number.POSITIVE_INFINITY);
    const { first, startMin, duration, worth } = lane.graph;
    const top = base.bestOnward(first, (startMin[first] as number) + (duration[first] as number));
    let tooMuch = Math.min(this.ceiling, top + (worth[first] as number) + 1);
    let left = this.limit;
    while (tooMuch > needed) {
      const wanted = Math.max(needed, tooMuch - 1 - ((tooMuch - needed) >> STEP));
      let onward = base;
      for (;;) {
        const forward = new WalkLabels(lane.graph);
        if (!forward.run(this.memory, isOut, wanted, onward, left)) return this.endEarly(tooMuch);
        left -= forward.work;
        const walks = forward.walks(20);
        const [best] = walks;
        tooMuch = Math.max(wanted, Math.min(tooMuch, (best?.worth ?? wanted - 1) + 1));
        if (best === undefined) break;
        this.suggest(best.members);
        if (!hasRepeats(best.members)) return this.endFutile(needed, tooMuch);
        for (const { members } of walks) this.rememberRepeats(members);
        const backward = new WalkLabels(this.backwards);
        if (!backward.run(this.memory, isOut, wanted, forward, left)) return this.endEarly(tooMuch);
        left -= backward.work;
        onward = backward;
      }
    }
    return tooMuch;
  }

  /** Null: more than the limit. */
  private forgetfulLabels(): WalkLabels | null {
    const { base, isOut, outAtBase } = this;
    if (base !== null && isOut.every((is, i) => is === outAtBase[i])) return base;
    const labels = new WalkLabels(this.backwards);
    if (!labels.run(this.forgetful, isOut, Number.NEGATIVE_INFINITY, null, this.limit)) return null;
    this.base = labels;
    outAtBase.set(isOut);
    return labels;
  }

  /** There is such a walk, and will be as long as no more members are out. */
  private endFutile(needed: number, tooMuch: number): number {
    this.futile = needed;
    this.outThen = this.isOut.reduce((sum, is) => sum + is, 0);
    return tooMuch;
  }
  private endEarly(tooMuch: number): number {
    this.dueAt = this.kernel.propagations + Math.floor(this.limit / WORK_PER_PROPAGATION);
    this.limit = Math.min(LAST_LIMIT, 2 * this.limit);
    return tooMuch;
  }

  /** The walk without what it passes again, if that is the worthiest so far. */
  private suggest(walk: readonly number[]): void {
    const once = [...new Set(walk)];
    const worth = once.reduce((sum, i) => sum + (this.lane.graph.worth[i] as number), 0);
    if (worth <= this.suggested) return;
    this.suggested = worth;
    this.lane.suggest(once);
  }

  /** Remember what the walk passes twice all the way between. */
  private rememberRepeats(walk: readonly number[]): void {
    const lastAt = new Map<number, number>();
    walk.forEach((i, at) => {
      const before = lastAt.get(i);
      lastAt.set(i, at);
      if (before === undefined) return;
      for (let k = before + 1; k < at; k++) this.memory.remember(walk[k] as number, i);
    });
  }

  /** Per remembered member its number, then how many remember it and which. */
  private argueMemory(): void {
    const { size } = this.lane.graph;
    for (let i = 0; i < size; i++) {
      const who: number[] = [];
      for (let j = 0; j < size; j++) if (this.memory.remembers(j, i)) who.push(j);
      if (who.length === 0) continue;
      this.argue(i);
      this.argue(who.length);
      for (const j of who) this.argue(j);
    }
  }
}

/** Short circles are shut out from the start. */
function rememberNeighbours(memory: WalkMemory, { size, step, duration, first, last }: WalkGraph): void {
  for (let j = 0; j < size; j++) {
    const near: (readonly [number, number])[] = [];
    for (let i = 0; i < size; i++) {
      const [forth, back] = [step[i * size + j] as number, step[j * size + i] as number];
      if (i === j || i === first || i === last || forth >= FORBIDDEN || back >= FORBIDDEN) continue;
      near.push([forth + back + (duration[i] as number), i]);
    }
    near.sort((a, b) => a[0] - b[0]);
    for (const [, i] of near.slice(0, NEIGHBOURS)) memory.remember(j, i);
  }
}

function hasRepeats(walk: readonly number[]): boolean {
  return new Set(walk).size < walk.length;
}
