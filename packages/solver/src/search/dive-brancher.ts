import type { Store } from '../engine/store.ts';
import type { Brancher } from './search.ts';

/** Holds one variable at its least value first, then hands over to another brancher: for shifting a plan to the left. */
export class DiveBrancher implements Brancher {
  side = -1;
  bound = 0;
  /** The variable; -1: none. */
  minimum = -1;
  private readonly rest: Brancher;
  private readonly store: Store;

  constructor(rest: Brancher, store: Store) {
    this.rest = rest;
    this.store = store;
  }

  next(): void {
    if (this.minimum >= 0 && !this.store.isFixed(this.minimum)) {
      this.side = 2 * this.minimum + 1;
      this.bound = -this.store.min(this.minimum);
      return;
    }
    this.rest.next();
    this.side = this.rest.side;
    this.bound = this.rest.bound;
  }
  returned(variable: number): void {
    this.rest.returned(variable);
  }
  wentBack(level: number): void {
    this.rest.wentBack(level);
  }
  refill(): void {
    this.rest.refill();
  }
  restarted(): void {
    this.rest.restarted();
  }
}
