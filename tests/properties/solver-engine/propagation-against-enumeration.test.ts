import { Explanation, type Kernel } from '@handrail/solver/engine/kernel';
import type { Compilation } from '@handrail/solver/engine/compilation';
import { compileModel } from '@handrail/solver/engine/compile-model';
import type { Constraint, IntervalId, Model, Point } from '@handrail/solver/model/model';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { ALL_KINDS, Dice, randomModel } from './random-model.ts';

/**
 * The simplest correct version of every constraint is to try all assignments and ask the checker. What the fast propagators do with
 * random bounds is compared with it: they may leave bounds too wide, but never cut a solution off, fail while there is one, or
 * accept an assignment that is none; and every reason that they give must hold in all solutions, not only in the state at hand.
 */
class Comparison {
  readonly counts = { failures: 0, assignments: 0, reasons: 0 };
  private readonly at: Compilation;
  private readonly kernel: Kernel;
  private readonly solutions: readonly (readonly number[])[];
  private readonly out = new Explanation();
  /** Variables that have a meaning in a solution: the model's, those with a stand-in left out. */
  private readonly own: readonly number[];
  private readonly orderOf: ReadonlyMap<number, Compilation['orders'][number]>;
  private readonly dice: Dice;

  constructor(model: Model, dice: Dice) {
    this.dice = dice;
    const solutions: number[][] = [];
    enumerateSolutions(model, 2_000_000, (solution) => solutions.push([...solution]));
    this.solutions = solutions;
    this.at = compileModel(model);
    this.kernel = this.at.kernel;
    this.own = this.at.terms.flatMap(({ variable }, id) => (variable === id ? [id] : []));
    this.orderOf = new Map(this.at.orders.map((order) => [order.variable, order]));
  }

  go(): void {
    const { kernel } = this;
    kernel.seal();
    if (!kernel.consistent || !kernel.propagate()) return expect(this.solutions).toEqual([]);
    this.checkReasons();
    kernel.store.commitRoot();
    kernel.trailDone = 0;
    for (let dive = 0; dive < 6; dive++) {
      this.dive();
      kernel.backtrack(0);
    }
  }

  /** Random decisions until everything is fixed or something fails. */
  private dive(): void {
    const { kernel, dice, counts } = this;
    const { store } = kernel;
    for (;;) {
      const open = Array.from({ length: store.variableCount }, (_, v) => v).filter((v) => this.isOpen(v));
      // Auxiliary variables last: they have no meaning until the times are known.
      const ranked = open.filter((v) => v < this.at.terms.length);
      if (open.length === 0) return this.checkAssignment();
      const v = dice.pick(ranked.length > 0 ? ranked : open);
      const split = dice.between(store.min(v) + 1, store.max(v));
      kernel.store.newLevel();
      if (dice.chance(50)) store.set(2 * v, split, 0);
      else store.set(2 * v + 1, 1 - split, 0);
      const decided = this.decisions();
      const left = this.solutions.filter((solution) => decided.every(([s, k]) => this.holds(solution, s, k) !== false));
      const isPossible = kernel.propagate();
      this.checkReasons();
      if (!isPossible) {
        counts.failures += 1;
        this.checkConflict();
        // With auxiliary variables decided at random a failure may be theirs.
        if (decided.every(([s]) => s >> 1 < this.at.terms.length)) expect(left).toEqual([]);
        return;
      }
      if (decided.some(([s]) => s >> 1 >= this.at.terms.length)) continue;
      for (const solution of left) {
        for (const x of this.own) {
          if (!this.holds(solution, 2 * x, store.min(x)) || !this.holds(solution, 2 * x + 1, -store.max(x)))
            throw new Error(`${solution.join(' ')} was cut off by the bounds of variable ${x}`);
        }
      }
    }
  }

  private decisions(): [number, number][] {
    const { store } = this.kernel;
    const found: [number, number][] = [];
    for (let t = 0; t < store.trailLength; t++) {
      if (store.trailReason[t] === 0) found.push([store.trailSide[t] as number, store.trailNew[t] as number]);
    }
    return found;
  }

  private isOpen(v: number): boolean {
    const { store } = this.kernel;
    if (v < this.at.terms.length && this.at.terms[v]?.variable !== v) return false;
    const owner = store.owner[v] as number;
    return !store.isFixed(v) && (owner < 0 || !store.fails(owner));
  }

  /** All is fixed and nothing failed: that is a solution. */
  private checkAssignment(): void {
    this.counts.assignments += 1;
    const { store } = this.kernel;
    const isThis = (solution: readonly number[]) =>
      this.own.every((v) => {
        const owner = store.owner[v] as number;
        return (owner >= 0 && store.fails(owner)) || solution[v] === store.min(v);
      });
    expect(this.solutions.some(isThis)).toBe(true);
  }

  private checkReasons(): void {
    const { kernel, out } = this;
    const { store } = kernel;
    for (let t = 0; t < store.trailLength; t++) {
      if (store.trailReason[t] === 0) continue;
      const side = store.trailSide[t] as number;
      // A weaker bound may be asked for.
      const bound = this.dice.between((store.trailOld[t] as number) + 1, store.trailNew[t] as number);
      kernel.explain(t, side, bound, out);
      const premises = Array.from({ length: out.size }, (_, i) => [out.side[i], out.bound[i]] as [number, number]);
      this.counts.reasons += 1;
      for (const solution of this.solutions) {
        if (this.holds(solution, side, bound) !== false) continue;
        if (premises.every(([s, k]) => this.holds(solution, s, k) === true))
          throw new Error(`a reason of ${out.label} does not hold in ${solution.join(' ')}`);
      }
    }
  }

  private checkConflict(): void {
    const { store } = this.kernel;
    const atoms = Array.from(
      { length: store.conflictSize },
      (_, i) => [store.conflictSide[i], store.conflictBound[i]] as [number, number],
    );
    for (const solution of this.solutions) {
      const areAllTrue = atoms.every(([s, k]) => this.holds(solution, s, k) === true);
      const isOneFirm = atoms.length === 0 || atoms.some(([s]) => this.isFirm(solution, s >> 1));
      if (areAllTrue && isOneFirm)
        throw new Error(`a failure of ${store.conflictLabel} holds in ${solution.join(' ')}`);
    }
  }

  private isFirm(solution: readonly number[], v: number): boolean {
    const owner = this.kernel.store.owner[v] as number;
    return owner < 0 || this.holds(solution, owner, 1 - (owner & 1)) === true;
  }

  /** Whether an atom holds in a solution, on the time of an absent interval always; null where its variable has no meaning there. */
  private holds(solution: readonly number[], side: number, bound: number): boolean | null {
    const v = side >> 1;
    if (!this.isFirm(solution, v)) return true;
    const value = v < this.at.terms.length ? (solution[v] as number) : this.orderIn(solution, v);
    if (value === null) return null;
    return (side & 1) === 0 ? value >= bound : -value >= bound;
  }

  private orderIn(solution: readonly number[], v: number): number | null {
    const order = this.orderOf.get(v);
    if (order === undefined) return null;
    const { first, second } = order;
    const points = [...first.from, first.to, ...second.from, second.to];
    if (!points.every(({ interval }) => this.isPresent(solution, interval))) return null;
    const instant = (point: Point) => this.instant(solution, point);
    const isBefore = second.from.every((from) => instant(first.to) <= instant(from));
    const isAfter = first.from.every((from) => instant(second.to) <= instant(from));
    return isBefore === isAfter ? null : isBefore ? 1 : 0;
  }

  private isPresent(solution: readonly number[], id: IntervalId): boolean {
    const { presence } = this.at.interval(this.at.root(id));
    return presence < 0 || this.holds(solution, presence, 1 - (presence & 1)) === true;
  }

  private instant(solution: readonly number[], { interval, of, offset }: Point): number {
    const { start, end } = this.at.model.intervals[this.at.root(interval)] as Model['intervals'][number];
    return (solution[of === 'start' ? start : end] as number) + offset;
  }
}

function compare(first: number, count: number, kinds: readonly Constraint['kind'][]): Comparison['counts'] {
  const total = { failures: 0, assignments: 0, reasons: 0 };
  for (let seed = first; seed < first + count; seed++) {
    const comparison = new Comparison(randomModel(seed, kinds), new Dice(seed));
    try {
      comparison.go();
    } catch (error) {
      throw new Error(`model ${seed}`, { cause: error });
    }
    for (const key of ['failures', 'assignments', 'reasons'] as const) total[key] += comparison.counts[key];
  }
  return total;
}

describe('what propagators say agrees with trying every assignment', () => {
  it.each(ALL_KINDS)('for the kind %s alone', (kind) => {
    const { assignments, reasons } = compare(70_000, 80, [kind]);
    expect(assignments).toBeGreaterThan(60);
    expect(reasons).toBeGreaterThan(500);
  });

  it('for all kinds mixed', () => {
    const { assignments, failures } = compare(80_000, 60, ALL_KINDS);
    expect(assignments).toBeGreaterThan(100);
    expect(failures).toBeGreaterThan(20);
  });
});
