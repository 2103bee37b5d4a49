import type { Store } from '../engine/store.ts';
import type { Brancher } from './search.ts';

/** Holds one variable at its least value first, then hands over to another brancher: for shifting a plan to the left. */
export class DiveBrancher implements Brancher {
  side = -1;
  bound = 0;
  /** The variable; -1: none. */
  minimum = -1;
  private readonly then: Brancher;
  private readonly store: Store;

  constructor(then: Brancher, store: Store) {
    this.then = then;
    this.store = store;
  }

  next(): void {
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
