/**
 * Integer bounds with a trail. Variable v has two sides, p = 2v (the value v) and p = 2v+1 (the value -v); only lower bounds
 * of sides are kept, so ub(v) = -lb[2v+1]. An atom (p, k) says "side p ≥ k"; its negation is (p^1, 1-k). A boolean is a
 * variable 0..1, and its literals are written as a side alone: 2v for "is 1", 2v+1 for "is 0".
 *
 * Invariant: a variable with an owner (the presence literal of the one interval it belongs to) has conditional bounds: its
 * atoms mean "if the owner holds". Crossing bounds then refute the owner instead of failing.
 */

/** How a bound came about. The two low bits of a reason tell the kind, the rest is a reference. */
export const REASON_DECISION = 0;
export const REASON_NOGOOD = 1;
export const REASON_RECORD = 2;
export const REASON_ARC = 3;

/** First word of a record that is not a propagator's own. */
export const RECORD_ATOMS = -1;
export const RECORD_EMPTY_DOMAIN = -2;
export const RECORD_ARC_LITERAL = -3;

export const NO_OWNER = -1;

export const NO_ARGUMENTS: readonly number[] = [];

export class Store {
  variableCount = 0;
  lb = new Int32Array(256);
  /** Bounds at level 0. */
  base = new Int32Array(256);
  owner = new Int32Array(128).fill(NO_OWNER);
  /** Last trail index of a side, or -1 when it stands at its level-0 bound. */
  head = new Int32Array(256).fill(-1);

  trailLength = 0;
  trailSide = new Int32Array(1024);
  trailNew = new Int32Array(1024);
  trailOld = new Int32Array(1024);
  trailPrevious = new Int32Array(1024);
  trailReason = new Int32Array(1024);
  trailLevel = new Int32Array(1024);

  level = 0;
  levelStart = new Int32Array(256);
  private levelRecords = new Int32Array(256);
  records = new Int32Array(4096);
  recordsTop = 1;

  /** Atoms that are all true and cannot be: filled by whoever finds a conflict. */
  conflictSize = 0;
  conflictSide = new Int32Array(256);
  conflictBound = new Int32Array(256);
  /** Index of the model constraint that failed and its label, for the proof; -1: bounds of one variable crossed. */
  conflictConstraint = -1;
  conflictLabel = '';
  /** Numbers that go with the label in a proof. */
  conflictArguments: readonly number[] = [];

  newVariable(min: number, max: number, owner = NO_OWNER): number {
    const v = this.variableCount++;
    if (2 * v + 2 > this.lb.length) {
      this.lb = growInt32(this.lb);
      this.base = growInt32(this.base);
      this.head = growInt32(this.head, -1);
      this.owner = growInt32(this.owner, NO_OWNER);
    }
    this.lb[2 * v] = this.base[2 * v] = min;
    this.lb[2 * v + 1] = this.base[2 * v + 1] = -max;
    this.owner[v] = owner;
    return v;
  }

  min(v: number): number {
    return this.lb[2 * v] as number;
  }
  max(v: number): number {
    return -(this.lb[2 * v + 1] as number);
  }
  isFixed(v: number): boolean {
    return (this.lb[2 * v] as number) >= -(this.lb[2 * v + 1] as number);
  }
  /** Literal known true. */
  holds(literal: number): boolean {
    return (this.lb[literal] as number) >= 1 - (literal & 1);
  }
  /** Literal known false. */
  fails(literal: number): boolean {
    return (this.lb[literal ^ 1] as number) >= (literal & 1);
  }
  isTrue(side: number, bound: number): boolean {
    return (this.lb[side] as number) >= bound;
  }

  /** Raise a side. False: conflict, whose atoms are in `conflict*`. Records for `reason` must be written before. */
  set(side: number, bound: number, reason: number): boolean {
    const old = this.lb[side] as number;
    if (bound <= old) return true;
    const crosses = (this.lb[side ^ 1] as number) > -bound;
    if (crosses) {
      const owner = this.owner[side >> 1] as number;
      if (owner !== NO_OWNER) {
        if ((this.lb[owner ^ 1] as number) >= (owner & 1)) return true;
        this.push(side, bound, old, reason);
        const record = this.openRecord(4);
        this.records[record] = RECORD_EMPTY_DOMAIN;
        this.records[record + 1] = side;
        this.records[record + 2] = bound;
        this.records[record + 3] = 0;
        return this.set(owner ^ 1, owner & 1, (record << 2) | REASON_RECORD);
      }
      this.push(side, bound, old, reason);
      this.beginConflict(-1, 'domain');
      this.conflictAtom(side, bound);
      this.conflictAtom(side ^ 1, 1 - bound);
      return false;
    }
    const owner = this.owner[side >> 1] as number;
    if (owner !== NO_OWNER && (this.lb[owner ^ 1] as number) >= (owner & 1)) return true;
    this.push(side, bound, old, reason);
    return true;
  }

  private push(side: number, bound: number, old: number, reason: number): void {
    const t = this.trailLength++;
    if (t >= this.trailSide.length) this.growTrail();
    this.trailSide[t] = side;
    this.trailNew[t] = bound;
    this.trailOld[t] = old;
    this.trailPrevious[t] = this.head[side] as number;
    this.trailReason[t] = reason;
    this.trailLevel[t] = this.level;
    this.head[side] = t;
    this.lb[side] = bound;
  }

  private growTrail(): void {
    this.trailSide = growInt32(this.trailSide);
    this.trailNew = growInt32(this.trailNew);
    this.trailOld = growInt32(this.trailOld);
    this.trailPrevious = growInt32(this.trailPrevious);
    this.trailReason = growInt32(this.trailReason);
    this.trailLevel = growInt32(this.trailLevel);
  }

  /** Space for a record of `size` words; returns its offset. */
  openRecord(size: number): number {
    const at = this.recordsTop;
    this.recordsTop = at + size;
    while (this.recordsTop > this.records.length) this.records = growInt32(this.records);
    return at;
  }

  beginConflict(constraint: number, label: string, labelArguments = NO_ARGUMENTS): void {
    this.conflictSize = 0;
    this.conflictArguments = labelArguments;
    this.conflictConstraint = constraint;
    this.conflictLabel = label;
  }
  conflictAtom(side: number, bound: number): void {
    const n = this.conflictSize++;
    if (n >= this.conflictSide.length) {
      this.conflictSide = growInt32(this.conflictSide);
      this.conflictBound = growInt32(this.conflictBound);
    }
    this.conflictSide[n] = side;
    this.conflictBound[n] = bound;
  }
  conflictLiteral(literal: number): void {
    this.conflictAtom(literal, 1 - (literal & 1));
  }

  newLevel(): void {
    this.level += 1;
    if (this.level >= this.levelStart.length) {
      this.levelStart = growInt32(this.levelStart);
      this.levelRecords = growInt32(this.levelRecords);
    }
    this.levelStart[this.level] = this.trailLength;
    this.levelRecords[this.level] = this.recordsTop;
  }

  backtrack(level: number): void {
    if (level >= this.level) return;
    const start = this.levelStart[level + 1] as number;
    for (let t = this.trailLength - 1; t >= start; t--) {
      const side = this.trailSide[t] as number;
      this.lb[side] = this.trailOld[t] as number;
      this.head[side] = this.trailPrevious[t] as number;
    }
    this.trailLength = start;
    this.recordsTop = this.levelRecords[level + 1] as number;
    this.level = level;
  }

  /** At level 0: make the present bounds the base and forget how they came about. */
  commitRoot(): void {
    for (let t = this.trailLength - 1; t >= 0; t--) {
      const side = this.trailSide[t] as number;
      this.base[side] = this.lb[side] as number;
      this.head[side] = -1;
    }
    this.trailLength = 0;
    this.recordsTop = 1;
  }

  /** Trail index of the entry that made the atom true; -1: true at level 0. The atom must be true. */
  indexOf(side: number, bound: number): number {
    if ((this.base[side] as number) >= bound) return -1;
    let t = this.head[side] as number;
    while ((this.trailOld[t] as number) >= bound) t = this.trailPrevious[t] as number;
    return t;
  }

  /** Bound of a side just before trail index t. */
  boundBefore(side: number, t: number): number {
    let i = this.head[side] as number;
    while (i >= t) i = this.trailPrevious[i] as number;
    return i < 0 ? (this.base[side] as number) : (this.trailNew[i] as number);
  }
}

export function growInt32(array: Int32Array<ArrayBuffer>, fill = 0): Int32Array<ArrayBuffer> {
  const grown = new Int32Array(array.length * 2);
  if (fill !== 0) grown.fill(fill, array.length);
  grown.set(array);
  return grown;
}
