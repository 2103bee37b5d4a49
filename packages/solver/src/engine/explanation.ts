import { growInt32 } from './store.ts';

/** In place of a constraint's index: a learned nogood. */
export const LEARNED = -(2 ** 30);

/** Atoms collected as the reason of one bound. */
export class Explanation {
  size = 0;
  side = new Int32Array(256);
  bound = new Int32Array(256);
  constraint = -1;
  label = '';
  /** Where in the store's records the numbers stand that go with the label in a proof, and how many they are. */
  argumentsAt = 0;
  argumentCount = 0;
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
