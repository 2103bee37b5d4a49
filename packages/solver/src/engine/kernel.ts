import { Arcs } from './arcs.ts';
import { Explanation } from './explanation.ts';
import { flatten } from './flatten.ts';
import { Nogoods } from './nogoods.ts';
import { PropagationQueue } from './propagation-queue.ts';
import type { Propagator } from './propagator.ts';
import {
  NO_ARGUMENTS,
  NO_OWNER,
  REASON_ARC,
  REASON_NOGOOD,
  REASON_RECORD,
  RECORD_ATOMS,
  RECORD_EMPTY_DOMAIN,
  Store,
} from './store.ts';
import type { Term } from './term.ts';

export { Explanation };
export type { Propagator, Term };

/** Store, nogoods, arcs and propagators, run to a fixed point. */
export class Kernel {
  readonly store = new Store();
  readonly nogoods = new Nogoods();
  readonly propagators: Propagator[] = [];
  propagations = 0;
  /** Which literals imply which (a present option implies a present master). */
  private readonly implied = new Map<number, number[]>();

  private readonly arcs = new Arcs(this.store, this);
  private readonly subscriptions: number[][] = [];

  private subscriberStart = new Int32Array(0);
  private subscriberIds = new Int32Array(0);
  private readonly queue = new PropagationQueue();

  /** Find circles of arcs. */
  detectsCycles = true;
  /** Say which constraints a circle consists of, for a proof. */
  namesCircles = false;
  private drains = 0;
  private raisedIn = new Int32Array(0);
  private raises = new Int32Array(0);

  trailDone = 0;
  /** Leave propagators of the last priority waiting: those whose constraint others enforce as well. */
  skipsRedundant = false;
  /** A value that is probably out of reach is being refuted: costly reasoning pays. */
  refutesFromBelow = false;
  /** False once a contradiction was found while posting. */
  consistent = true;

  newVariable(min: number, max: number, owner = NO_OWNER): number {
    const v = this.store.newVariable(min, max, owner);
    this.nogoods.openSide(2 * v, min, max);
    this.nogoods.openSide(2 * v + 1, -max, -min);
    while (this.subscriptions.length < 2 * this.store.variableCount) this.subscriptions.push([]);
    return v;
  }

  /** Say that whenever literal `a` holds, so does `b`. Only recorded; the clause is posted apart. */
  noteImplication(a: number, b: number): void {
    const known = this.implied.get(a) ?? [];
    known.push(b);
    this.implied.set(a, known);
  }
  /** Whether `a` implies `b` by noted implications. */
  implies(a: number, b: number): boolean {
    if (a === b) return true;
    return (this.implied.get(a) ?? []).some((c) => this.implies(c, b));
  }

  post(propagator: Propagator, sides: Iterable<number>): number {
    const id = this.propagators.push(propagator) - 1;
    for (const side of new Set(sides)) (this.subscriptions[side] as number[]).push(id);
    return id;
  }

  /** `to ≥ from + lag` when all `literals` hold. */
  postArc(from: Term, to: Term, lag: number, literals: readonly number[], constraint: number, label: string): void {
    const unique = [...new Set(literals)];
    if (unique.some((l) => unique.includes(l ^ 1) || this.isFalseAtBase(l))) return;
    const weight = lag + from.offset - to.offset;
    if (from.variable === to.variable) {
      if (weight > 0)
        this.postClause(
          unique.map((l) => l ^ 1),
          constraint,
        );
      return;
    }
    const source = 2 * from.variable;
    const target = 2 * to.variable;
    this.arcs.add(source, target, weight, unique, constraint, label);
    this.arcs.add(target ^ 1, source ^ 1, weight, unique, constraint, label);
  }

  private isFalseAtBase(literal: number): boolean {
    return (this.store.base[literal ^ 1] as number) >= (literal & 1);
  }

  /** At least one literal holds. */
  postClause(literals: readonly number[], constraint: number): void {
    const unique = [...new Set(literals)];
    if (unique.some((l) => unique.includes(l ^ 1))) return;
    this.postNogood(
      unique.map((l) => l ^ 1),
      unique.map((l) => l & 1),
      constraint,
    );
  }

  postNogood(sides: number[], bounds: number[], constraint: number): void {
    const store = this.store;
    if (sides.length === 0) {
      store.beginConflict(constraint, 'clause');
      this.consistent = false;
      return;
    }
    if (sides.length === 1) {
      const record = this.recordAtoms(constraint, this.labelId('clause'), [], []);
      if (!store.set((sides[0] as number) ^ 1, 1 - (bounds[0] as number), (record << 2) | REASON_RECORD))
        this.consistent = false;
      return;
    }
    // Atoms already true at this moment go last, so that the watches are on open ones when there are two.
    const order = sides.map((_, i) => i).sort((a, b) => this.rank(sides, bounds, a) - this.rank(sides, bounds, b));
    const s = order.map((i) => sides[i] as number);
    const k = order.map((i) => bounds[i] as number);
    const reference = this.nogoods.add(s, k, s.length, 0);
    this.nogoods.constraintOf.set(reference, constraint);
    if (store.isTrue(s[1] as number, k[1] as number)) {
      if (store.isTrue(s[0] as number, k[0] as number)) {
        this.nogoods.fail(store, reference);
        this.consistent = false;
      } else if (!store.set((s[0] as number) ^ 1, 1 - (k[0] as number), (reference << 2) | REASON_NOGOOD)) {
        this.consistent = false;
      }
    }
  }
  private rank(sides: number[], bounds: number[], i: number): number {
    return this.store.isTrue(sides[i] as number, bounds[i] as number) ? 1 : 0;
  }

  /** Write a record of explicit atoms as a reason. `labelArguments` go with the label in a proof. */
  recordAtoms(
    constraint: number,
    label: number,
    sides: readonly number[],
    bounds: readonly number[],
    labelArguments = NO_ARGUMENTS,
  ): number {
    const n = sides.length;
    const at = this.store.openRecord(5 + 2 * n + labelArguments.length);
    const records = this.store.records;
    records[at] = RECORD_ATOMS;
    records[at + 1] = constraint;
    records[at + 2] = label;
    records[at + 3] = n;
    records[at + 4] = labelArguments.length;
    const atoms = at + 5;
    for (let i = 0; i < n; i++) {
      records[atoms + 2 * i] = sides[i] as number;
      records[atoms + 2 * i + 1] = bounds[i] as number;
    }
    for (let i = 0; i < labelArguments.length; i++) records[atoms + 2 * n + i] = labelArguments[i] as number;
    return at;
  }

  private readonly labels: string[] = [];
  private readonly labelNumbers = new Map<string, number>();
  /** A number for a label, to keep in records. */
  labelId(label: string): number {
    const known = this.labelNumbers.get(label);
    if (known !== undefined) return known;
    this.labelNumbers.set(label, this.labels.length);
    return this.labels.push(label) - 1;
  }

  /** Flatten what was posted and schedule everything once. Must be called before the first `propagate`. */
  seal(): void {
    const sides = 2 * this.store.variableCount;
    this.arcs.seal(sides);
    [this.subscriberStart, this.subscriberIds] = flatten(this.subscriptions);
    this.raisedIn = new Int32Array(sides);
    this.raises = new Int32Array(sides);
    this.queue.open(this.propagators.map(({ priority }) => priority));
    for (let id = 0; id < this.propagators.length; id++) this.queue.add(id);
    this.trailDone = 0;
    for (let half = 0; half < this.arcs.count; half++) {
      if (this.consistent && !this.arcs.run(half)) this.consistent = false;
    }
  }

  clearQueue(): void {
    this.queue.clear();
  }

  /** Run everything to a fixed point. False: conflict, described in the store; the queue is then empty. */
  propagate(): boolean {
    this.nogoods.failed = 0;
    for (;;) {
      if (!this.drainTrail()) {
        this.queue.clear();
        return false;
      }
      const id = this.queue.take(this.skipsRedundant);
      if (id < 0) return true;
      this.propagations++;
      if (!(this.propagators[id] as Propagator).propagate()) {
        this.queue.clear();
        return false;
      }
    }
  }

  private drainTrail(): boolean {
    const { store, nogoods, arcs, queue } = this;
    this.drains++;
    while (this.trailDone < store.trailLength) {
      const t = this.trailDone++;
      const side = store.trailSide[t] as number;
      const bound = store.trailNew[t] as number;
      if (!nogoods.visit(store, side, store.trailOld[t] as number, bound)) return false;
      if ((store.lb[side] as number) === bound) {
        if (this.detectsCycles && this.isRisingOften(side) && !this.refuseCircle(t)) return false;
        if (!arcs.runFrom(side)) return false;
      }
      if (!arcs.runWokenBy(side)) return false;
      const end = this.subscriberStart[side + 1] as number;
      for (let i = this.subscriberStart[side] as number; i < end; i++) queue.add(this.subscriberIds[i] as number);
    }
    return true;
  }

  /** Whether a side has been raised a power of two of times since the last fixed point. */
  private isRisingOften(side: number): boolean {
    if (this.raisedIn[side] !== this.drains) {
      this.raisedIn[side] = this.drains;
      this.raises[side] = 1;
      return false;
    }
    const n = ((this.raises[side] as number) += 1);
    return n >= 2 && (n & (n - 1)) === 0;
  }

  /** A circle of arcs with a positive sum behind a trail entry: its conditions cannot all hold. False: conflict. */
  private refuseCircle(t: number): boolean {
    const halves = this.arcs.circleBehind(t);
    if (halves === null) return true;
    const store = this.store;
    const side = store.trailSide[t] as number;
    const literals = this.arcs.conditionsOf(halves);
    const names = this.namesCircles ? this.arcs.constraintsOf(halves) : NO_ARGUMENTS;
    const owner = store.owner[side >> 1] as number;
    const all = [...literals].filter((literal) => literal !== owner);
    if (owner !== NO_OWNER && !store.holds(owner)) {
      if (store.fails(owner)) return true;
      const bounds = all.map((literal) => 1 - (literal & 1));
      return store.set(
        owner ^ 1,
        owner & 1,
        (this.recordAtoms(-1, this.labelId('circle'), all, bounds, names) << 2) | REASON_RECORD,
      );
    }
    store.beginConflict(-1, 'circle', names);
    for (const literal of all) store.conflictLiteral(literal);
    if (owner !== NO_OWNER) store.conflictLiteral(owner);
    return false;
  }

  /** Fill `out` with the atoms for which (side, bound) became true at trail index t. `out.constraint` LEARNED: by a nogood. */
  explain(t: number, side: number, bound: number, out: Explanation): void {
    const store = this.store;
    const reason = store.trailReason[t] as number;
    const reference = reason >> 2;
    out.size = 0;
    out.argumentCount = 0;
    switch (reason & 3) {
      case REASON_NOGOOD: {
        return this.nogoods.explain(reference, out);
      }
      case REASON_ARC: {
        return this.arcs.explain(reference, bound, out);
      }
      default:
        this.explainRecord(reference, side, bound, t, out);
    }
  }

  private explainRecord(record: number, side: number, bound: number, t: number, out: Explanation): void {
    const records = this.store.records;
    const kind = records[record] as number;
    if (kind >= 0) {
      const propagator = this.propagators[kind] as Propagator;
      out.constraint = propagator.constraint;
      out.label = propagator.label;
      propagator.explain(record + 1, side, bound, t, out);
    } else if (kind === RECORD_ATOMS) {
      out.constraint = records[record + 1] as number;
      out.label = this.labels[records[record + 2] as number] as string;
      const end = record + 5 + 2 * (records[record + 3] as number);
      out.argumentsAt = end;
      out.argumentCount = records[record + 4] as number;
      for (let i = record + 5; i < end; i += 2) out.add(records[i] as number, records[i + 1] as number);
    } else if (kind === RECORD_EMPTY_DOMAIN) {
      out.constraint = -1;
      out.label = 'domain';
      const s = records[record + 1] as number;
      const k = records[record + 2] as number;
      out.add(s, k);
      out.add(s ^ 1, 1 - k);
    } else {
      this.arcs.explainRefuted(record, out);
    }
  }

  backtrack(level: number): void {
    this.store.backtrack(level);
    this.trailDone = Math.min(this.trailDone, this.store.trailLength);
  }
}
