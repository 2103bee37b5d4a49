import type { Store } from '../engine/store.ts';
import type { Brancher } from './search.ts';

/**
 * First decides given atoms in order, skipping what is settled; then hands over to another brancher. With the booleans of an
 * incumbent it shifts a plan to the left; with some of them it searches the neighbourhood of a plan.
 */
export class DiveBrancher implements Brancher {
  side = -1;
  bound = 0;
  private readonly then: Brancher;
  /** Side variable to hold at its least value once the atoms are decided; -1: none. */
  minimum = -1;
  private readonly store: Store;
  private sides: readonly number[] = [];
  private bounds: readonly number[] = [];

  constructor(then: Brancher, store: Store) {
    this.then = then;
    this.store = store;
  }

  /** Literals to decide first, in this order. */
  aim(sides: readonly number[], bounds: readonly number[]): void {
    this.sides = sides;
    this.bounds = bounds;
  }

  next(): void {
    for (let i = 0; i < this.sides.length; i++) {
      const side = this.sides[i] as number;
      const bound = this.bounds[i] as number;
      if (this.store.isTrue(side, bound) || this.store.isTrue(side ^ 1, 1 - bound)) continue;
      this.side = side;
      this.bound = bound;
      return;
    }
    if (this.minimum >= 0 && !this.store.isFixed(this.minimum)) {
      this.side = 2 * this.minimum + 1;
      this.bound = -this.store.min(this.minimum);
      return;
    }
    this.then.next();
    this.side = this.then.side;
    this.bound = this.then.bound;
  }
  returned(variable: number): void {
    this.then.returned(variable);
  }
  refill(): void {
    this.then.refill();
  }
  restarted(): void {
    this.then.restarted();
  }
}
