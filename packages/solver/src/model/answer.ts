/** What a solver says while it works and when it stops. Plain data, shared by every engine behind the model. */
import type { Literal, Solution } from './model.ts';

export interface SolveOptions {
  /** Any 32-bit integer. Same model, seed and budget give the same answer on every machine. */
  readonly seed: number;
  /** Stop after this many conflicts in all. Absent: until done. The only budget that is reproducible. */
  readonly conflictBudget?: number;
  /** Asked often; true stops the search and keeps the best so far. The caller may read a clock, the engine never does. */
  readonly shouldStop?: () => boolean;
  /** A complete or partial assignment to start from and to stay near (index = VariableId; undefined: no wish). */
  readonly hint?: readonly (number | undefined)[];
  /** Literals to take as true. When no solution exists under them, `core` names a subset that already collides. */
  readonly assumptions?: readonly Literal[];
  /** Receives the proof; see model/proof-format. Absent: no log. */
  readonly proof?: ProofSink;
}

export interface ProofSink {
  /** Takes some whole lines, in ASCII, each with its line end. What is open when a solve is broken off never comes. */
  write(text: Uint8Array, lines: number): void;
}

/** One lexicographic level: `value` of the best solution, `bound` that none can beat, `proved` when they meet. */
export interface LevelResult {
  readonly objective: string;
  readonly value: number | null;
  readonly bound: number;
  readonly proved: boolean;
}

export type SolveEvent =
  | {
      readonly kind: 'incumbent';
      readonly solution: Solution;
      readonly levels: readonly LevelResult[];
      readonly conflicts: number;
    }
  | { readonly kind: 'bound'; readonly level: number; readonly bound: number; readonly conflicts: number }
  | { readonly kind: 'progress'; readonly conflicts: number };

export interface SolveResult {
  /** `optimal`: every level proved. `feasible`: a solution, not all levels proved. `infeasible`: proved that there is none. `unknown`: stopped first. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unknown';
  readonly solution: Solution | null;
  readonly levels: readonly LevelResult[];
  readonly statistics: {
    readonly conflicts: number;
    readonly decisions: number;
    readonly propagations: number;
    readonly restarts: number;
  };
  /** Infeasible under `assumptions`: which of them collide. Empty when the model alone has no solution. */
  readonly core: readonly Literal[];
}
