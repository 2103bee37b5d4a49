import type { Explanation, Kernel, Propagator } from '../engine/kernel.ts';
import { NO_OWNER, REASON_RECORD } from '../engine/store.ts';

/**
 * Σ coefficient·side ≤ bound when all literals hold; coefficients positive, a side standing for v or -v.
 * Bounds consistency; a reason gives away whatever slack it has, whole terms first.
 */
export class LinearPropagator implements Propagator {
  readonly constraint: number;
  readonly label: string;
  readonly priority = 1;
  private readonly kernel: Kernel;
  private readonly sides: Int32Array;
  private readonly coefficients: Float64Array;
  private readonly bound: number;
  private readonly literals: Int32Array;
  private readonly owner: number;
  private readonly id: number;

  constructor(
    kernel: Kernel,
    sides: readonly number[],
    coefficients: readonly number[],
    bound: number,
    literals: readonly number[],
    owner: number,
    constraint: number,
    label: string,
  ) {
    this.kernel = kernel;
    this.sides = Int32Array.from(sides);
    this.coefficients = Float64Array.from(coefficients);
    this.bound = bound;
    this.literals = Int32Array.from(literals);
    this.owner = owner;
    this.constraint = constraint;
    this.label = label;
    this.id = kernel.post(this, [...sides, ...literals]);
  }

  propagate(): boolean {
    const store = this.kernel.store;
    const { sides, coefficients } = this;
    let open = -1;
    for (const literal of this.literals) {
      if (store.holds(literal)) continue;
      if (open >= 0 || store.fails(literal)) return true;
      open = literal;
    }
    let slack = this.bound;
    for (let i = 0; i < sides.length; i++)
      slack -= (coefficients[i] as number) * (store.lb[sides[i] as number] as number);
    if (slack < 0) {
      if (open >= 0) return store.set(open ^ 1, open & 1, this.reason());
      if (this.owner === NO_OWNER || sides.length === 0) return this.fail();
      const side = sides[0] as number;
      return store.set(
        side ^ 1,
        -((store.lb[side] as number) + Math.floor(slack / (coefficients[0] as number))),
        this.reason(),
      );
    }
    if (open >= 0) return true;
    for (let i = 0; i < sides.length; i++) {
      const side = sides[i] as number;
      const coefficient = coefficients[i] as number;
      const low = store.lb[side] as number;
      if (coefficient * (-(store.lb[side ^ 1] as number) - low) > slack) {
        if (!store.set(side ^ 1, -(low + Math.floor(slack / coefficient)), this.reason())) return false;
      }
    }
    return true;
  }

  private reason(): number {
    const record = this.kernel.store.openRecord(1);
    this.kernel.store.records[record] = this.id;
    return (record << 2) | REASON_RECORD;
  }

  private fail(): boolean {
    const store = this.kernel.store;
    store.beginConflict(this.constraint, this.label);
    this.lifted(store.trailLength, -1, 0, (side, bound) => store.conflictAtom(side, bound));
    for (const literal of this.literals) store.conflictLiteral(literal);
    return false;
  }

  explain(_record: number, side: number, bound: number, t: number, out: Explanation): void {
    const at = this.sides.indexOf(side ^ 1);
    const isLiteral = this.literals.includes(side ^ 1) && (at < 0 || this.isTrueFalsified(side));
    this.lifted(t, isLiteral ? -1 : at, 1 - bound, (s, k) => out.add(s, k));
    for (const literal of this.literals) if (literal !== (side ^ 1)) out.literal(literal);
  }

  /** A side that is both a condition and a term: whichever reading gives a reason. Conditions take precedence. */
  private isTrueFalsified(side: number): boolean {
    return this.literals.includes(side ^ 1);
  }

  /** Atoms of the terms (all but `skip`, taken as ≥ assumed) whose sum exceeds the bound, weakened while it still does. */
  private lifted(t: number, skip: number, assumed: number, emit: (side: number, bound: number) => void): void {
    const store = this.kernel.store;
    const { sides, coefficients } = this;
    const n = sides.length;
    let surplus = -this.bound - 1;
    const at = new Int32Array(n);
    for (let i = 0; i < n; i++) {
      at[i] = i === skip ? assumed : store.boundBefore(sides[i] as number, t);
      surplus += (coefficients[i] as number) * (at[i] as number);
    }
    for (let i = 0; i < n; i++) {
      if (i === skip) continue;
      const base = store.base[sides[i] as number] as number;
      const cost = (coefficients[i] as number) * ((at[i] as number) - base);
      if (cost <= surplus) {
        surplus -= cost;
        at[i] = base;
      }
    }
    for (let i = 0; i < n; i++) {
      if (i === skip) continue;
      const side = sides[i] as number;
      if ((at[i] as number) > (store.base[side] as number)) {
        const give = Math.floor(surplus / (coefficients[i] as number));
        surplus -= give * (coefficients[i] as number);
        at[i] = (at[i] as number) - give;
      }
      emit(side, at[i] as number);
    }
  }
}
