import { type Explanation } from './explanation.ts';
import { flatten } from './flatten.ts';
import { NO_OWNER, REASON_ARC, REASON_RECORD, RECORD_ARC_LITERAL, type Store } from './store.ts';

/** What arcs need to know of which literals imply which. */
interface Implications {
  implies(a: number, b: number): boolean;
}

/** Steps after which a circle is given up. */
const LONGEST_CIRCLE = 400;

/**
 * Half arcs: when `source` side rises to b and the literals hold, `target` side rises to b + weight. A half whose bounds can not
 * be reconciled refutes the one literal that is open.
 */
export class Arcs {
  private readonly store: Store;
  private readonly implications: Implications;
  private readonly halfSource: number[] = [];
  private readonly halfTarget: number[] = [];
  private readonly halfWeight: number[] = [];
  private readonly halfLiterals: number[][] = [];
  private readonly halfNeeded: number[] = [];
  private readonly halfConstraint: number[] = [];
  private readonly halfLabel: string[] = [];

  // The same, flattened by `seal`; `arc` by source side, `woken` by literal.
  private arcStart = new Int32Array(0);
  private arcIds = new Int32Array(0);
  // Beside `arcIds`, to pass most of them by: target, weight and first condition (-1: none).
  private arcTarget = new Int32Array(0);
  private arcWeight = new Int32Array(0);
  private arcCondition = new Int32Array(0);
  private wokenStart = new Int32Array(0);
  private wokenIds = new Int32Array(0);
  private hSource = new Int32Array(0);
  private hTarget = new Int32Array(0);
  private hWeight = new Int32Array(0);
  private hLiteralStart = new Int32Array(0);
  private hNeeded = new Int32Array(0);
  private hLiterals = new Int32Array(0);

  constructor(store: Store, implications: Implications) {
    this.store = store;
    this.implications = implications;
  }

  get count(): number {
    return this.halfSource.length;
  }

  add(s: number, t: number, w: number, literals: readonly number[], constraint: number, label: string): void {
    const owner = this.store.owner[t >> 1] as number;
    const sourceOwner = this.store.owner[s >> 1] as number;
    const needed = literals.filter((l) => owner === NO_OWNER || !this.implications.implies(owner, l));
    // A conditional source says nothing unless its owner is among the conditions.
    if (sourceOwner !== NO_OWNER && !literals.includes(sourceOwner)) {
      if (owner === NO_OWNER || !this.implications.implies(owner, sourceOwner)) needed.push(sourceOwner);
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

  seal(sides: number): void {
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
    this.hSource = Int32Array.from(this.halfSource);
    this.hTarget = Int32Array.from(this.halfTarget);
    this.hWeight = Int32Array.from(this.halfWeight);
    this.hNeeded = Int32Array.from(this.halfNeeded);
    this.hLiterals = Int32Array.from(literals);
    this.hLiteralStart = Int32Array.from(literalStart);
    this.arcTarget = this.arcIds.map((half) => this.halfTarget[half] as number);
    this.arcWeight = this.arcIds.map((half) => this.halfWeight[half] as number);
    this.arcCondition = this.arcIds.map((half) =>
      this.halfNeeded[half] === 0 ? -1 : ((this.halfLiterals[half] as number[])[0] as number),
    );
  }

  /** All halves that start at a side which has risen. False: conflict. */
  runFrom(side: number): boolean {
    const { arcTarget, arcWeight, arcCondition } = this;
    const { lb } = this.store;
    const bound = lb[side] as number;
    const end = this.arcStart[side + 1] as number;
    for (let i = this.arcStart[side] as number; i < end; i++) {
      if (bound + (arcWeight[i] as number) <= (lb[arcTarget[i] as number] as number)) continue;
      const condition = arcCondition[i] as number;
      if (condition >= 0 && (lb[condition ^ 1] as number) >= (condition & 1)) continue;
      if (!this.run(this.arcIds[i] as number)) return false;
    }
    return true;
  }

  /** All halves that a literal, now true, is a condition of. False: conflict. */
  runWokenBy(literal: number): boolean {
    const end = this.wokenStart[literal + 1] as number;
    let i = this.wokenStart[literal] as number;
    if (i === end || !this.store.holds(literal)) return true;
    for (; i < end; i++) {
      if (!this.run(this.wokenIds[i] as number)) return false;
    }
    return true;
  }

  run(half: number): boolean {
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

  explain(half: number, bound: number, out: Explanation): void {
    out.constraint = this.halfConstraint[half] as number;
    out.label = this.halfLabel[half] as string;
    out.add(this.hSource[half] as number, bound - (this.hWeight[half] as number));
    const first = this.hLiteralStart[half] as number;
    const needed = first + (this.hNeeded[half] as number);
    for (let i = first; i < needed; i++) out.literal(this.hLiterals[i] as number);
  }

  /** Why a literal was refuted, by the record that `run` wrote. */
  explainRefuted(record: number, out: Explanation): void {
    const { records } = this.store;
    const half = records[record + 1] as number;
    const bound = records[record + 2] as number;
    const literal = records[record + 3] as number;
    out.constraint = this.halfConstraint[half] as number;
    out.label = this.halfLabel[half] as string;
    out.add(this.hSource[half] as number, bound - (this.hWeight[half] as number));
    out.add((this.hTarget[half] as number) ^ 1, 1 - bound);
    const end = this.hLiteralStart[half + 1] as number;
    for (let i = this.hLiteralStart[half] as number; i < end; i++) {
      const other = this.hLiterals[i] as number;
      if (other !== literal) out.literal(other);
    }
  }

  /**
   * Halves of a circle of arcs with a positive sum behind a trail entry, newest first; null: none there. Bounds would creep round
   * it to the end of the horizon; its conditions alone cannot all hold.
   */
  circleBehind(t: number): number[] | null {
    const store = this.store;
    const side = store.trailSide[t] as number;
    const halves: number[] = [];
    let sum = 0;
    let at = t;
    for (let steps = 0; steps < LONGEST_CIRCLE; steps++) {
      const reason = store.trailReason[at] as number;
      if ((reason & 3) !== REASON_ARC) return null;
      const half = reason >> 2;
      const weight = this.hWeight[half] as number;
      const need = (store.trailNew[at] as number) - weight;
      const source = this.hSource[half] as number;
      halves.push(half);
      sum += weight;
      if (source === side) return sum <= 0 ? null : halves;
      if ((store.base[source] as number) >= need) return null;
      let from = store.head[source] as number;
      while (from >= at || (store.trailOld[from] as number) >= need) from = store.trailPrevious[from] as number;
      at = from;
    }
    return null;
  }

  /** The constraints that some halves come from, each once. */
  constraintsOf(halves: readonly number[]): number[] {
    return [...new Set(halves.map((half) => this.halfConstraint[half] as number))];
  }

  /** The conditions of some halves, each once. */
  conditionsOf(halves: readonly number[]): Set<number> {
    const literals = new Set<number>();
    for (const half of halves) {
      const first = this.hLiteralStart[half] as number;
      for (let i = first; i < first + (this.hNeeded[half] as number); i++) literals.add(this.hLiterals[i] as number);
    }
    return literals;
  }
}
