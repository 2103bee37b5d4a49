import { NOGOOD_HEADER, Nogoods } from './nogoods.ts';
import {
  NO_OWNER,
  REASON_ARC,
  REASON_NOGOOD,
  REASON_RECORD,
  RECORD_ARC_LITERAL,
  RECORD_ATOMS,
  RECORD_EMPTY_DOMAIN,
  Store,
  growInt32,
} from './store.ts';

/** A number that is a variable plus a constant: a model's start, end or duration as the engine holds it. */
export interface Term {
  readonly variable: number;
  readonly offset: number;
}

/**
 * One filtering algorithm for one constraint. `propagate` raises bounds through the store until nothing more follows and
 * returns false on conflict; `explain` says which atoms, all true before trail index `t`, make (side, bound) follow.
 */
export interface Propagator {
  /** Index into the model's constraints, for the proof; -1: none. */
  readonly constraint: number;
  readonly label: string;
  /** 0 runs first, 3 last; 3 only where others enforce the constraint as well. */
  readonly priority: number;
  propagate(): boolean;
  explain(record: number, side: number, bound: number, t: number, out: Explanation): void;
}

/** In place of a constraint's index: a learned nogood. */
export const LEARNED = -(2 ** 30);

/** Atoms collected as the reason of one bound. */
export class Explanation {
  size = 0;
  side = new Int32Array(256);
  bound = new Int32Array(256);
  constraint = -1;
  label = '';
  /** The nogood, where `constraint` is LEARNED. */
  nogood = 0;

  add(side: number, bound: number): void {
    const n = this.size++;
    if (n >= this.side.length) {
      this.side = growInt32(this.side);
      this.bound = growInt32(this.bound);
    }
    this.side[n] = side;
    this.bound[n] = bound;
  }
  literal(literal: number): void {
    this.add(literal, 1 - (literal & 1));
  }
}

const PRIORITIES = 4;

/** Store, nogoods, arcs and propagators, run to a fixed point. */
export class Kernel {
  readonly store = new Store();
  readonly nogoods = new Nogoods();
  readonly propagators: Propagator[] = [];
  propagations = 0;
  /** Counts for a proof: which literals imply which (a present option implies a present master). */
  private readonly implied = new Map<number, number[]>();

  // Half arcs: when `source` side rises to b and the literals hold, `target` side rises to b + weight.
  private readonly halfSource: number[] = [];
  private readonly halfTarget: number[] = [];
  private readonly halfWeight: number[] = [];
  private readonly halfLiterals: number[][] = [];
  private readonly halfNeeded: number[] = [];
  private readonly halfConstraint: number[] = [];
  private readonly halfLabel: string[] = [];
  private readonly subscriptions: number[][] = [];

  // The same, flattened by `seal`.
  private arcStart = new Int32Array(0);
  private arcIds = new Int32Array(0);
  private wokenStart = new Int32Array(0);
  private wokenIds = new Int32Array(0);
  private subscriberStart = new Int32Array(0);
  private subscriberIds = new Int32Array(0);
  private hSource = new Int32Array(0);
  private hTarget = new Int32Array(0);
  private hWeight = new Int32Array(0);
  private hLiteralStart = new Int32Array(0);
  private hNeeded = new Int32Array(0);
  private hLiterals = new Int32Array(0);

  /** Find circles of arcs. Off while a proof is written: such a reason spans several constraints. */
  detectsCycles = true;
  private drains = 0;
  private raisedIn = new Int32Array(0);
  private raises = new Int32Array(0);

  private queues: Int32Array[] = [];
  private readonly queueHead = new Int32Array(PRIORITIES);
  private readonly queueSize = new Int32Array(PRIORITIES);
  private inQueue = new Uint8Array(0);
  private priority = new Uint8Array(0);
  private queueMask = 0;
  trailDone = 0;
  /** Leave propagators of the last priority waiting: those whose constraint others enforce as well. */
  skipsRedundant = false;
  /** False once a contradiction was found while posting. */
  consistent = true;
  /** The newest nogood that became a reason or failed: for activity. */
  failedNogood = 0;

  newVariable(min: number, max: number, owner = NO_OWNER): number {
    const v = this.store.newVariable(min, max, owner);
    this.nogoods.ensureSides(2 * this.store.variableCount);
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
    this.addHalf(source, target, weight, unique, constraint, label);
    this.addHalf(target ^ 1, source ^ 1, weight, unique, constraint, label);
  }

  private isFalseAtBase(literal: number): boolean {
    return (this.store.base[literal ^ 1] as number) >= (literal & 1);
  }

  private addHalf(
    s: number,
    t: number,
    w: number,
    literals: readonly number[],
    constraint: number,
    label: string,
  ): void {
    const owner = this.store.owner[t >> 1] as number;
    const sourceOwner = this.store.owner[s >> 1] as number;
    const needed = literals.filter((l) => owner === NO_OWNER || !this.implies(owner, l));
    // A conditional source says nothing unless its owner is among the conditions.
    if (sourceOwner !== NO_OWNER && !literals.includes(sourceOwner)) {
      if (owner === NO_OWNER || !this.implies(owner, sourceOwner)) needed.push(sourceOwner);
    }
    const rest = literals.filter((l) => !needed.includes(l));
    if (owner !== NO_OWNER && !literals.includes(owner)) rest.push(owner);
    this.halfSource.push(s);
    this.halfTarget.push(t);
    this.halfWeight.push(w);
    this.halfLiterals.push([...needed, ...rest]);
    this.halfNeeded.push(needed.length);
    this.halfConstraint.push(constraint);
    this.halfLabel.push(label);
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

  /** The constraint that a nogood of the model came from, by reference; absent for learned ones. */
  nogoodConstraint = new Map<number, number>();

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
    this.nogoodConstraint.set(reference, constraint);
    if (store.isTrue(s[1] as number, k[1] as number)) {
      if (store.isTrue(s[0] as number, k[0] as number)) {
        this.conflictFromNogood(reference);
        this.consistent = false;
      } else if (!store.set((s[0] as number) ^ 1, 1 - (k[0] as number), (reference << 2) | REASON_NOGOOD)) {
        this.consistent = false;
      }
    }
  }
  private rank(sides: number[], bounds: number[], i: number): number {
    return this.store.isTrue(sides[i] as number, bounds[i] as number) ? 1 : 0;
  }

  /** Write a record of explicit atoms as a reason. */
  recordAtoms(constraint: number, label: number, sides: readonly number[], bounds: readonly number[]): number {
    const n = sides.length;
    const at = this.store.openRecord(4 + 2 * n);
    const records = this.store.records;
    records[at] = RECORD_ATOMS;
    records[at + 1] = constraint;
    records[at + 2] = label;
    records[at + 3] = n;
    for (let i = 0; i < n; i++) {
      records[at + 4 + 2 * i] = sides[i] as number;
      records[at + 5 + 2 * i] = bounds[i] as number;
    }
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
    const arcs: number[][] = Array.from({ length: sides }, () => []);
    const woken: number[][] = Array.from({ length: sides }, () => []);
    const literals: number[] = [];
    const literalStart = [0];
    this.halfSource.forEach((source, half) => {
      (arcs[source] as number[]).push(half);
      for (const literal of this.halfLiterals[half] as number[]) {
        (woken[literal] as number[]).push(half);
        literals.push(literal);
      }
      literalStart.push(literals.length);
    });
    [this.arcStart, this.arcIds] = flatten(arcs);
    [this.wokenStart, this.wokenIds] = flatten(woken);
    [this.subscriberStart, this.subscriberIds] = flatten(this.subscriptions);
    this.hSource = Int32Array.from(this.halfSource);
    this.hTarget = Int32Array.from(this.halfTarget);
    this.hWeight = Int32Array.from(this.halfWeight);
    this.hNeeded = Int32Array.from(this.halfNeeded);
    this.hLiterals = Int32Array.from(literals);
    this.hLiteralStart = Int32Array.from(literalStart);
    this.raisedIn = new Int32Array(sides);
    this.raises = new Int32Array(sides);
    const n = this.propagators.length;
    let capacity = 1;
    while (capacity < n + 1) capacity *= 2;
    this.queueMask = capacity - 1;
    this.queues = Array.from({ length: PRIORITIES }, () => new Int32Array(capacity));
    this.inQueue = new Uint8Array(n);
    this.priority = Uint8Array.from(this.propagators, (p) => p.priority);
    for (let id = 0; id < n; id++) this.enqueue(id);
    this.trailDone = 0;
    for (let half = 0; half < this.hSource.length; half++) {
      if (this.consistent && !this.runHalf(half)) this.consistent = false;
    }
  }

  enqueue(id: number): void {
    if (this.inQueue[id]) return;
    this.inQueue[id] = 1;
    const q = this.priority[id] as number;
    const size = this.queueSize[q] as number;
    (this.queues[q] as Int32Array)[((this.queueHead[q] as number) + size) & this.queueMask] = id;
    this.queueSize[q] = size + 1;
  }

  clearQueue(): void {
    for (let q = 0; q < PRIORITIES; q++) {
      const queue = this.queues[q] as Int32Array;
      let head = this.queueHead[q] as number;
      for (let i = this.queueSize[q] as number; i > 0; i--) {
        this.inQueue[queue[head] as number] = 0;
        head = (head + 1) & this.queueMask;
      }
      this.queueHead[q] = head;
      this.queueSize[q] = 0;
    }
  }

  /** Run everything to a fixed point. False: conflict, described in the store; the queue is then empty. */
  propagate(): boolean {
    this.failedNogood = 0;
    for (;;) {
      if (!this.drainTrail()) {
        this.clearQueue();
        return false;
      }
      let q = 0;
      while (q < PRIORITIES && this.queueSize[q] === 0) q++;
      if (q === PRIORITIES || (q === PRIORITIES - 1 && this.skipsRedundant)) return true;
      const head = this.queueHead[q] as number;
      const id = (this.queues[q] as Int32Array)[head] as number;
      this.queueHead[q] = (head + 1) & this.queueMask;
      (this.queueSize[q] as number)--;
      this.inQueue[id] = 0;
      this.propagations++;
      if (!(this.propagators[id] as Propagator).propagate()) {
        this.clearQueue();
        return false;
      }
    }
  }

  private drainTrail(): boolean {
    const store = this.store;
    this.drains++;
    while (this.trailDone < store.trailLength) {
      const t = this.trailDone++;
      const side = store.trailSide[t] as number;
      const bound = store.trailNew[t] as number;
      if ((this.nogoods.watchSize[side] as number) > 0 && !this.visitWatches(side, store.trailOld[t] as number, bound))
        return false;
      if ((store.lb[side] as number) === bound) {
        if (this.detectsCycles && this.isRisingOften(side) && !this.checkCycle(t)) return false;
        const end = this.arcStart[side + 1] as number;
        for (let i = this.arcStart[side] as number; i < end; i++) {
          if (!this.runHalf(this.arcIds[i] as number)) return false;
        }
      }
      const wokenEnd = this.wokenStart[side + 1] as number;
      let w = this.wokenStart[side] as number;
      if (w < wokenEnd && store.holds(side)) {
        for (; w < wokenEnd; w++) {
          if (!this.runHalf(this.wokenIds[w] as number)) return false;
        }
      }
      const end = this.subscriberStart[side + 1] as number;
      for (let i = this.subscriberStart[side] as number; i < end; i++) this.enqueue(this.subscriberIds[i] as number);
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

  /**
   * Look for a circle of arcs with a positive sum behind a trail entry. Bounds would creep round it to the end of the horizon;
   * its conditions alone cannot all hold.
   */
  private checkCycle(t: number): boolean {
    const store = this.store;
    const side = store.trailSide[t] as number;
    const halves: number[] = [];
    let sum = 0;
    let at = t;
    for (let steps = 0; steps < 400; steps++) {
      const reason = store.trailReason[at] as number;
      if ((reason & 3) !== REASON_ARC) return true;
      const half = reason >> 2;
      const weight = this.hWeight[half] as number;
      const need = (store.trailNew[at] as number) - weight;
      const source = this.hSource[half] as number;
      halves.push(half);
      sum += weight;
      if (source === side) return sum <= 0 || this.failCycle(halves, side);
      if ((store.base[source] as number) >= need) return true;
      let from = store.head[source] as number;
      while (from >= at || (store.trailOld[from] as number) >= need) from = store.trailPrevious[from] as number;
      at = from;
    }
    return true;
  }

  private failCycle(halves: readonly number[], side: number): boolean {
    const store = this.store;
    const literals = new Set<number>();
    for (const half of halves) {
      const first = this.hLiteralStart[half] as number;
      for (let i = first; i < first + (this.hNeeded[half] as number); i++) literals.add(this.hLiterals[i] as number);
    }
    const owner = store.owner[side >> 1] as number;
    const all = [...literals].filter((literal) => literal !== owner);
    if (owner !== NO_OWNER && !store.holds(owner)) {
      if (store.fails(owner)) return true;
      const bounds = all.map((literal) => 1 - (literal & 1));
      return store.set(
        owner ^ 1,
        owner & 1,
        (this.recordAtoms(-1, this.labelId('circle'), all, bounds) << 2) | REASON_RECORD,
      );
    }
    store.beginConflict(-1, 'circle');
    for (const literal of all) store.conflictLiteral(literal);
    if (owner !== NO_OWNER) store.conflictLiteral(owner);
    return false;
  }

  private runHalf(half: number): boolean {
    const store = this.store;
    const lb = store.lb;
    const target = this.hTarget[half] as number;
    const bound = (lb[this.hSource[half] as number] as number) + (this.hWeight[half] as number);
    if (bound <= (lb[target] as number)) return true;
    const first = this.hLiteralStart[half] as number;
    const end = this.hLiteralStart[half + 1] as number;
    if (first === end) return store.set(target, bound, (half << 2) | REASON_ARC);
    const needed = first + (this.hNeeded[half] as number);
    let open = -1;
    let i = first;
    for (; i < needed; i++) {
      const literal = this.hLiterals[i] as number;
      if ((lb[literal] as number) >= 1 - (literal & 1)) continue;
      if (open >= 0 || (lb[literal ^ 1] as number) >= (literal & 1)) return true;
      open = literal;
    }
    if (open < 0) return store.set(target, bound, (half << 2) | REASON_ARC);
    // One condition is open: refute it when the bounds can not be reconciled and all the rest holds.
    if (-bound >= (lb[target ^ 1] as number)) return true;
    for (; i < end; i++) {
      const literal = this.hLiterals[i] as number;
      if ((lb[literal] as number) < 1 - (literal & 1)) return true;
    }
    const record = store.openRecord(4);
    store.records[record] = RECORD_ARC_LITERAL;
    store.records[record + 1] = half;
    store.records[record + 2] = bound;
    store.records[record + 3] = open;
    return store.set(open ^ 1, open & 1, (record << 2) | REASON_RECORD);
  }

  private visitWatches(side: number, old: number, bound: number): boolean {
    const store = this.store;
    const lb = store.lb;
    const nogoods = this.nogoods;
    const arena = nogoods.arena;
    const list = nogoods.watch[side] as Int32Array<ArrayBuffer>;
    const size = nogoods.watchSize[side] as number;
    let keep = 0;
    let i = 0;
    let ok = true;
    for (; i < size; i += 4) {
      const k = list[i + 1] as number;
      const blockerSide = list[i + 2] as number;
      const blockerBound = list[i + 3] as number;
      // An atom whose negation holds as well belongs to an interval on its way to absence: nothing follows from it.
      if (
        k > bound ||
        k <= old ||
        (lb[blockerSide ^ 1] as number) >= 1 - blockerBound ||
        -bound < (lb[side ^ 1] as number)
      ) {
        if (keep !== i) {
          list[keep] = list[i] as number;
          list[keep + 1] = k;
          list[keep + 2] = blockerSide;
          list[keep + 3] = blockerBound;
        }
        keep += 4;
        continue;
      }
      const reference = list[i] as number;
      const a = reference + NOGOOD_HEADER;
      // Bring the fired atom to position 1.
      if (arena[a] === side && arena[a + 1] === k) {
        arena[a] = arena[a + 2] as number;
        arena[a + 1] = arena[a + 3] as number;
        arena[a + 2] = side;
        arena[a + 3] = k;
      }
      const s0 = arena[a] as number;
      const k0 = arena[a + 1] as number;
      if ((lb[s0 ^ 1] as number) >= 1 - k0) {
        list[keep] = reference;
        list[keep + 1] = k;
        list[keep + 2] = s0;
        list[keep + 3] = k0;
        keep += 4;
        continue;
      }
      const end = a + 2 * (arena[reference] as number);
      let found = 0;
      for (let x = a + 4; x < end; x += 2) {
        if ((lb[arena[x] as number] as number) < (arena[x + 1] as number)) {
          found = x;
          break;
        }
      }
      if (found !== 0) {
        const s = arena[found] as number;
        const b = arena[found + 1] as number;
        arena[a + 2] = s;
        arena[a + 3] = b;
        arena[found] = side;
        arena[found + 1] = k;
        nogoods.pushWatch(s, reference, b, s0, k0);
        continue;
      }
      list[keep] = reference;
      list[keep + 1] = k;
      list[keep + 2] = s0;
      list[keep + 3] = k0;
      keep += 4;
      if ((lb[s0] as number) >= k0) {
        this.conflictFromNogood(reference);
        ok = false;
      } else if (!store.set(s0 ^ 1, 1 - k0, (reference << 2) | REASON_NOGOOD)) {
        ok = false;
      }
      if (!ok) {
        i += 4;
        break;
      }
    }
    for (; i < size; i++) list[keep++] = list[i] as number;
    nogoods.watchSize[side] = keep;
    return ok;
  }

  conflictFromNogood(reference: number): void {
    const store = this.store;
    const arena = this.nogoods.arena;
    this.failedNogood = reference;
    store.beginConflict(this.nogoodConstraint.get(reference) ?? LEARNED, 'clause');
    const n = arena[reference] as number;
    for (let i = 0; i < n; i++) {
      const a = reference + NOGOOD_HEADER + 2 * i;
      store.conflictAtom(arena[a] as number, arena[a + 1] as number);
    }
  }

  /** Fill `out` with the atoms for which (side, bound) became true at trail index t. `out.constraint` LEARNED: by a nogood. */
  explain(t: number, side: number, bound: number, out: Explanation): void {
    const store = this.store;
    const reason = store.trailReason[t] as number;
    const reference = reason >> 2;
    out.size = 0;
    switch (reason & 3) {
      case REASON_NOGOOD: {
        const arena = this.nogoods.arena;
        out.nogood = reference;
        out.constraint = this.nogoodConstraint.get(reference) ?? LEARNED;
        out.label = 'clause';
        const end = reference + NOGOOD_HEADER + 2 * (arena[reference] as number);
        for (let a = reference + NOGOOD_HEADER + 2; a < end; a += 2)
          out.add(arena[a] as number, arena[a + 1] as number);
        return;
      }
      case REASON_ARC: {
        out.constraint = this.halfConstraint[reference] as number;
        out.label = this.halfLabel[reference] as string;
        out.add(this.hSource[reference] as number, bound - (this.hWeight[reference] as number));
        const first = this.hLiteralStart[reference] as number;
        const needed = first + (this.hNeeded[reference] as number);
        for (let i = first; i < needed; i++) out.literal(this.hLiterals[i] as number);
        return;
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
      const n = records[record + 3] as number;
      for (let i = 0; i < n; i++) out.add(records[record + 4 + 2 * i] as number, records[record + 5 + 2 * i] as number);
    } else if (kind === RECORD_EMPTY_DOMAIN) {
      out.constraint = -1;
      out.label = 'domain';
      const s = records[record + 1] as number;
      const k = records[record + 2] as number;
      out.add(s, k);
      out.add(s ^ 1, 1 - k);
    } else {
      const half = records[record + 1] as number;
      const k = records[record + 2] as number;
      const literal = records[record + 3] as number;
      out.constraint = this.halfConstraint[half] as number;
      out.label = this.halfLabel[half] as string;
      out.add(this.hSource[half] as number, k - (this.hWeight[half] as number));
      out.add((this.hTarget[half] as number) ^ 1, 1 - k);
      const end = this.hLiteralStart[half + 1] as number;
      for (let i = this.hLiteralStart[half] as number; i < end; i++) {
        const other = this.hLiterals[i] as number;
        if (other !== literal) out.literal(other);
      }
    }
  }

  /** After the nogoods were moved about: follow those of the model. */
  moveNogoods(moved: ReadonlyMap<number, number>): void {
    const constraints = new Map<number, number>();
    for (const [reference, constraint] of this.nogoodConstraint)
      constraints.set(moved.get(reference) as number, constraint);
    this.nogoodConstraint = constraints;
  }

  backtrack(level: number): void {
    this.store.backtrack(level);
    this.trailDone = Math.min(this.trailDone, this.store.trailLength);
  }
}

function flatten(lists: readonly (readonly number[])[]): [Int32Array<ArrayBuffer>, Int32Array<ArrayBuffer>] {
  const start = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    start[i + 1] = (start[i] as number) + list.length;
  });
  const ids = new Int32Array(start[lists.length] as number);
  lists.forEach((list, i) => ids.set(list, start[i]));
  return [start, ids];
}
