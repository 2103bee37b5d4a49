import type { Explanation } from './explanation.ts';

/**
 * One filtering algorithm for one constraint. `propagate` raises bounds through the store until nothing more follows and
 * returns false on conflict; `explain` says which atoms, all true before trail index `t`, make (side, bound) follow.
 */
export interface Propagator {
  /** Index into the model's constraints, for the proof; -1: none. */
  readonly constraint: number;
  readonly label: string;
  /** 0 runs first, 3 last; 3 only where others enforce the constraint as well. */
  readonly priority: number;
  propagate(): boolean;
  explain(record: number, side: number, bound: number, t: number, out: Explanation): void;
}
