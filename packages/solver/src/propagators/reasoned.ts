import type { Explanation, Kernel, Propagator, Term } from '../engine/kernel.ts';
import { REASON_RECORD } from '../engine/store.ts';

/**
 * Base of propagators whose reasons are written out as atoms at the moment of the inference. `premise*` collect the atoms,
 * then one of `raise`, `makeTrue` or `refuteOne` draws the conclusion.
 */
export abstract class ReasonedPropagator implements Propagator {
  readonly constraint: number;
  readonly label: string;
  readonly priority: number;
  protected readonly kernel: Kernel;
  private readonly labelId: number;
  protected readonly sides: number[] = [];
  protected readonly bounds: number[] = [];

  constructor(kernel: Kernel, constraint: number, label: string, priority: number) {
    this.kernel = kernel;
    this.constraint = constraint;
    this.label = label;
    this.priority = priority;
    this.labelId = kernel.labelId(label);
  }

  abstract propagate(): boolean;

  explain(_record: number, _side: number, _bound: number, _t: number, _out: Explanation): void {
    throw new Error(`${this.label}: reasons are written out, never asked for`);
  }

  private readonly labelArguments: number[] = [];

  /** Give the next reason a further number for the proof: they follow the label, parted by slashes. */
  protected argue(value: number): void {
    this.labelArguments.push(value);
  }

  protected noPremises(): void {
    this.labelArguments.length = 0;
    this.sides.length = 0;
    this.bounds.length = 0;
  }
  protected premise(side: number, bound: number): void {
    this.sides.push(side);
    this.bounds.push(bound);
  }
  protected premiseLiteral(literal: number): void {
    this.premise(literal, 1 - (literal & 1));
  }
  protected premiseAtLeast(term: Term, value: number): void {
    this.premise(2 * term.variable, value - term.offset);
  }
  protected premiseAtMost(term: Term, value: number): void {
    this.premise(2 * term.variable + 1, term.offset - value);
  }

  protected lower(term: Term): number {
    return (this.kernel.store.lb[2 * term.variable] as number) + term.offset;
  }
  protected upper(term: Term): number {
    return term.offset - (this.kernel.store.lb[2 * term.variable + 1] as number);
  }

  protected raise(side: number, bound: number): boolean {
    const store = this.kernel.store;
    if ((store.lb[side] as number) >= bound) return true;
    const { constraint, labelId, sides, bounds, labelArguments } = this;
    const record = this.kernel.recordAtoms(constraint, labelId, sides, bounds, labelArguments);
    return store.set(side, bound, (record << 2) | REASON_RECORD);
  }
  protected raiseAtLeast(term: Term, value: number): boolean {
    return this.raise(2 * term.variable, value - term.offset);
  }
  protected raiseAtMost(term: Term, value: number): boolean {
    return this.raise(2 * term.variable + 1, term.offset - value);
  }
  protected makeTrue(literal: number): boolean {
    return this.raise(literal, 1 - (literal & 1));
  }

  protected fail(): boolean {
    const store = this.kernel.store;
    store.beginConflict(this.constraint, this.label);
    this.sides.forEach((side, i) => store.conflictAtom(side, this.bounds[i] as number));
    return false;
  }

  /** The premises cannot hold together with all of `literals`: fail, or refute the one that is open. */
  protected refuteOne(literals: readonly number[]): boolean {
    const store = this.kernel.store;
    let open = -1;
    for (const literal of literals) {
      if (store.holds(literal)) continue;
      if (open >= 0 || store.fails(literal)) return true;
      open = literal;
    }
    for (const literal of literals) if (literal !== open) this.premiseLiteral(literal);
    return open < 0 ? this.fail() : this.makeTrue(open ^ 1);
  }

  /** Literals of `conditions` that must hold before a bound of `term` may be raised: those its owner does not imply. */
  protected neededFor(term: Term, conditions: readonly number[]): number[] {
    const owner = this.kernel.store.owner[term.variable] as number;
    return conditions.filter((literal) => owner < 0 || !this.kernel.implies(owner, literal));
  }
  protected allHold(literals: readonly number[]): boolean {
    for (const literal of literals) if (!this.kernel.store.holds(literal)) return false;
    return true;
  }
  protected anyFails(literals: readonly number[]): boolean {
    for (const literal of literals) if (this.kernel.store.fails(literal)) return true;
    return false;
  }
  protected premiseLiterals(literals: readonly number[]): void {
    for (const literal of literals) this.premiseLiteral(literal);
  }
}

/** Both sides of each term, and the literals themselves and their negations: everything that can change an outcome. */
export function sidesOf(terms: readonly Term[], literals: readonly number[]): number[] {
  return [...terms.flatMap(({ variable }) => [2 * variable, 2 * variable + 1]), ...literals.flatMap((l) => [l, l ^ 1])];
}
