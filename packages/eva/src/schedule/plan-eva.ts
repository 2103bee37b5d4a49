/** One EVA: build the model, let the engine work, read every better answer back. */
import { solve } from '@handrail/solver/engine/solve';
import type { LevelResult, ProofSink, SolveOptions } from '@handrail/solver/model/answer';
import type { Solution } from '@handrail/solver/model/model';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { type EvaModel, evaModel } from './eva-model.ts';
import type { EvaProblem } from './eva-problem.ts';
import { hintFromTimeline } from './hint-from-timeline.ts';
import { readEvaTimeline } from './read-eva-timeline.ts';

export interface EvaPlanOptions {
  readonly seed: number;
  readonly conflictBudget?: number;
  readonly shouldStop?: () => boolean;
  /** A timeline to start from and stay near. */
  readonly near?: EvaTimeline | null;
  /** Receives the proof, for a second program to check against `EvaPlan.evaModel.model`. */
  readonly proof?: ProofSink | null;
}

export type EvaPlanEvent =
  | { readonly kind: 'incumbent'; readonly timeline: EvaTimeline; readonly conflicts: number }
  | { readonly kind: 'progress'; readonly conflicts: number };

export interface EvaPlan {
  readonly evaModel: EvaModel;
  /** optimal, feasible: `timeline` is there. infeasible: proved that not even an EVA without work fits. unknown: stopped first. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unknown';
  readonly timeline: EvaTimeline | null;
  readonly solution: Solution | null;
  readonly levels: readonly LevelResult[];
  readonly conflicts: number;
  /** Where its proof went. */
  readonly proof: ProofSink | null;
}

export function* planEva(problem: EvaProblem, options: EvaPlanOptions): Generator<EvaPlanEvent, EvaPlan> {
  const built = evaModel(problem);
  const { seed } = options;
  const read = (solution: Solution, levels: readonly LevelResult[], proved: boolean, conflicts: number) =>
    readEvaTimeline(built, solution, { levels, proved, seed, conflicts });
  const running = solve(built.model, solveOptions(built, options));
  for (;;) {
    const next = running.next();
    if (next.done === true) {
      const { status, solution, levels, statistics } = next.value;
      const { conflicts } = statistics;
      const timeline = solution === null ? null : read(solution, levels, status === 'optimal', conflicts);
      return { evaModel: built, status, timeline, solution, levels, conflicts, proof: options.proof ?? null };
    }
    const event = next.value;
    if (event.kind === 'incumbent') {
      const timeline = read(event.solution, event.levels, false, event.conflicts);
      yield { kind: 'incumbent', timeline, conflicts: event.conflicts };
    } else yield { kind: 'progress', conflicts: event.conflicts };
  }
}

function solveOptions(
  built: EvaModel,
  { seed, conflictBudget, shouldStop, near, proof }: EvaPlanOptions,
): SolveOptions {
  return {
    seed,
    ...(conflictBudget === undefined ? {} : { conflictBudget }),
    ...(shouldStop === undefined ? {} : { shouldStop }),
    ...(proof === undefined || proof === null ? {} : { proof }),
    ...(near === undefined || near === null ? {} : { hint: hintFromTimeline(built, near) }),
  };
}
