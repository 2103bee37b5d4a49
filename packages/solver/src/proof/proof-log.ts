import type { Explanation, Kernel } from '../engine/kernel.ts';
import type { Store } from '../engine/store.ts';

/** Receives what the engine infers and learns. */
export interface ProofLog {
  /** A set of true atoms that one constraint rules out. */
  conflict(store: Store): void;
  inference(reason: Explanation, side: number, bound: number): void;
  nogood(sides: readonly number[], bounds: readonly number[]): void;
  /** All that is on the trail at level 0 follows for good. */
  root(kernel: Kernel): void;
}
