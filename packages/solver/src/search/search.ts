import { Analyser } from '../engine/analyser.ts';
import type { Kernel } from '../engine/kernel.ts';
import { REASON_NOGOOD } from '../engine/store.ts';
import type { ProofLog } from '../proof/proof-log.ts';
import { ActivityHeap } from './activity-heap.ts';

/** Which atom to decide next; `side` -1 when everything is settled. */
export interface Brancher {
  side: number;
  bound: number;
  /** Fill `side` and `bound`. */
  next(): void;
  /** Told after every backtrack, so that it can take unsettled variables back. */
  returned(variable: number): void;
  /** Told after every backtrack: nothing that was decided above this level holds any more. */
  wentBack(level: number): void;
  restarted(): void;
  /** All was taken back: nothing stays set aside. */
  refill(): void;
}

/**
 * `solution`: everything settled, bounds still in place. `refuted`: no solution at level 0. `assumption`: none under the
 * assumptions; `core` names some that collide. `limit`: out of conflicts.
 */
export type Outcome = 'solution' | 'refuted' | 'assumption' | 'limit';

/** Decisions after which a run pauses, so that its caller can look up. */
const DECISIONS_PER_RUN = 400;

/** Conflict-driven search under assumptions. Keeps its nogoods and activities from call to call. */
export class Search {
  readonly kernel: Kernel;
  readonly activity: ActivityHeap;
  readonly analyser: Analyser;
  conflicts = 0;
  decisions = 0;
  restarts = 0;
  /** Atoms taken as true, one level each, before any decision. */
  assumptionSide: number[] = [];
  assumptionBound: number[] = [];
  core: number[] = [];
  proof: ProofLog | null = null;
  brancher: Brancher | null = null;
  private batch: readonly (readonly [number, number])[] = [];
  private reduceAt = 3000;
  private reductions = 0;
  private lubyIndex = 0;
  private untilRestart = 0;

  constructor(kernel: Kernel) {
    this.kernel = kernel;
    this.activity = new ActivityHeap(kernel.store.variableCount);
    this.analyser = new Analyser(kernel, this.activity, (level) => this.backtrack(level));
  }

  setProof(proof: ProofLog | null): void {
    this.proof = proof;
    this.analyser.proof = proof;
  }

  /** `batch`: further atoms, decided together on one level after the assumptions; a failure of those is not explained. */
  setAssumptions(
    atoms: readonly (readonly [number, number])[],
    batch: readonly (readonly [number, number])[] = [],
  ): void {
    this.backtrack(0);
    this.batch = batch;
    this.analyser.batchLevel = 0;
    this.brancher?.refill();
    this.assumptionSide = atoms.map(([side]) => side);
    this.assumptionBound = atoms.map(([, bound]) => bound);
  }

  /** Raise a bound for good. False: that leaves no solution. */
  fix(side: number, bound: number): boolean {
    this.backtrack(0);
    if (!this.kernel.store.set(side, bound, 0)) return this.refutedAtRoot();
    return this.propagateRoot();
  }

  propagateRoot(): boolean {
    if (!this.kernel.propagate()) return this.refutedAtRoot();
    this.proof?.root(this.kernel);
    this.kernel.store.commitRoot();
    this.kernel.trailDone = 0;
    return true;
  }
  /** Close the proof of a conflict at level 0; always false. */
  refutedAtRoot(): false {
    this.proof?.root(this.kernel);
    this.proof?.conflict(this.kernel);
    this.proof?.nogood([], []);
    return false;
  }

  backtrack(level: number): void {
    const store = this.kernel.store;
    if (level >= store.level) return;
    const start = store.levelStart[level + 1] as number;
    for (let t = store.trailLength - 1; t >= start; t--) this.brancher?.returned((store.trailSide[t] as number) >> 1);
    this.kernel.backtrack(level);
    this.brancher?.wentBack(level);
  }

  /** Search until something is known, `conflictLimit` more conflicts were met or many decisions made. */
  run(conflictLimit: number): Outcome {
    const { kernel } = this;
    const store = kernel.store;
    const stopAt = this.conflicts + conflictLimit;
    const decisionsStop = this.decisions + DECISIONS_PER_RUN;
    for (;;) {
      if (!kernel.propagate()) {
        this.conflicts++;
        const lesson = this.resolve();
        if (lesson !== 'learned') return this.giveUp(lesson);
        if (this.conflicts >= stopAt) return 'limit';
        continue;
      }
      if (store.level === 0 && store.trailLength > 0) {
        this.proof?.root(kernel);
        store.commitRoot();
        kernel.trailDone = 0;
      }
      if (this.untilRestart <= 0) this.restart();
      if (kernel.nogoods.learned.length >= this.reduceAt) this.reduce();
      if (store.level < this.assumptionSide.length) {
        const side = this.assumptionSide[store.level] as number;
        const bound = this.assumptionBound[store.level] as number;
        if (store.isTrue(side ^ 1, 1 - bound)) {
          this.core = this.explainFailure(side, bound);
          return 'assumption';
        }
        store.newLevel();
        if (!store.set(side, bound, 0)) throw new Error('an open assumption failed');
        continue;
      }
      if (this.batch.length > 0 && store.level === this.assumptionSide.length) {
        if (!this.decideBatch()) return this.giveUp('exhausted');
        continue;
      }
      const brancher = this.brancher as Brancher;
      brancher.next();
      if (brancher.side < 0) return 'solution';
      if (this.decisions >= decisionsStop) return 'limit';
      this.decisions++;
      store.newLevel();
      if (!store.set(brancher.side, brancher.bound, 0)) throw new Error('a decision was already false');
    }
  }

  /** Learn from the conflict and go back. */
  private resolve(): 'learned' | 'refuted' | 'exhausted' {
    const { kernel, analyser } = this;
    const store = kernel.store;
    this.untilRestart--;
    const lesson = analyser.analyse();
    if (lesson !== 'learned') return lesson;
    this.backtrack(analyser.backjump);
    const side = analyser.side[0] as number;
    const bound = analyser.bound[0] as number;
    let reason = 0;
    if (analyser.size > 1) {
      const reference = kernel.nogoods.add(analyser.side, analyser.bound, analyser.size, analyser.glue);
      kernel.nogoods.arena[reference + 3] = analyser.proofName;
      reason = (reference << 2) | REASON_NOGOOD;
    }
    this.activity.decay(0.95);
    kernel.nogoods.decay();
    return store.set(side ^ 1, 1 - bound, reason) ? 'learned' : this.conflictAfterLearning();
  }

  private conflictAfterLearning(): 'learned' | 'refuted' | 'exhausted' {
    this.kernel.clearQueue();
    this.conflicts++;
    return this.resolve();
  }

  private giveUp(lesson: 'refuted' | 'exhausted'): Outcome {
    if (lesson === 'refuted') return 'refuted';
    this.core = [];
    this.backtrack(0);
    return 'assumption';
  }

  /** All of the batch at once. False: some of it is false already. */
  private decideBatch(): boolean {
    const store = this.kernel.store;
    store.newLevel();
    this.analyser.batchLevel = store.level;
    for (const [side, bound] of this.batch) {
      if (store.isTrue(side, bound)) continue;
      if (store.isTrue(side ^ 1, 1 - bound) || !store.set(side, bound, 0)) return false;
    }
    return true;
  }

  private restart(): void {
    this.untilRestart = 100 * luby(++this.lubyIndex);
    if (this.lubyIndex === 1) return;
    this.restarts++;
    this.backtrack(Math.min(this.kernel.store.level, this.assumptionSide.length + (this.batch.length > 0 ? 1 : 0)));
    this.brancher?.restarted();
  }

  private reduce(): void {
    const store = this.kernel.store;
    const locked = new Set<number>();
    for (let t = 0; t < store.trailLength; t++) {
      const reason = store.trailReason[t] as number;
      if ((reason & 3) === REASON_NOGOOD) locked.add(reason >> 2);
    }
    for (const reference of this.kernel.nogoods.constraintOf.keys()) locked.add(reference);
    const moved = this.kernel.nogoods.reduce(locked, (name) => this.proof?.drop(name));
    for (let t = 0; t < store.trailLength; t++) {
      const reason = store.trailReason[t] as number;
      if ((reason & 3) === REASON_NOGOOD) {
        store.trailReason[t] = ((moved.get(reason >> 2) as number) << 2) | REASON_NOGOOD;
      }
    }
    this.reductions++;
    this.reduceAt = this.kernel.nogoods.learned.length + 2000 + 150 * this.reductions;
  }

  /** Assumptions that together make (side, bound) false, itself included, as indices into the assumptions. */
  private explainFailure(side: number, bound: number): number[] {
    const store = this.kernel.store;
    const decisions = this.analyser.decisionsBehind(side ^ 1, 1 - bound);
    const core: number[] = [];
    for (let i = 0; i < this.assumptionSide.length; i++) {
      const s = this.assumptionSide[i] as number;
      const isThis = s === side && this.assumptionBound[i] === bound;
      if (isThis || decisions.some((t) => store.trailSide[t] === s && store.trailLevel[t] === i + 1)) core.push(i);
    }
    this.proof?.nogood(
      core.map((i) => this.assumptionSide[i] as number),
      core.map((i) => this.assumptionBound[i] as number),
    );
    return core;
  }
}

function luby(index: number): number {
  let size = 1;
  let power = 1;
  while (size < index) {
    size = 2 * size + 1;
    power *= 2;
  }
  let i = index;
  while (size > 1) {
    if (i === size) return power;
    size = (size - 1) / 2;
    power /= 2;
    if (i > size) i -= size;
  }
  return 1;
}
