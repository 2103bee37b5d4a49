import type { Explanation, Kernel } from '../engine/kernel.ts';

/** Receives what the engine infers and learns. */
export interface ProofLog {
  /** The store's conflict: true atoms that one constraint or nogood rules out. */
  conflict(kernel: Kernel): void;
  inference(reason: Explanation, side: number, bound: number): void;
  /** Returns the nogood's name. */
  nogood(sides: readonly number[], bounds: readonly number[]): number;
  drop(name: number): void;
  /** All that is on the trail at level 0 follows for good. */
  root(kernel: Kernel): void;
}
