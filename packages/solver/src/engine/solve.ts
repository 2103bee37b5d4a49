import type { SolveEvent, SolveOptions, SolveResult } from '../model/answer.ts';
import type { Model } from '../model/model.ts';
import { Run } from './run.ts';
import type { RunSettings } from './run-settings.ts';
import { openProject, solveProjectAtOnce } from './solve-project-at-once.ts';

/**
 * Solve a model: a generator that yields every better solution, every better bound and signs of life, and returns the
 * result. Lazy clause generation: propagation with explanations, learned nogoods, restarts; objectives one after another,
 * each with the nogoods, activities and incumbent of the one before; full search, neighbourhoods of the incumbent and
 * attempts on the lower bound take turns.
 *
 * Deterministic: same model, seed and conflict budget, same events. All arithmetic is on 32-bit integers; sums past ±2^29
 * are refused with a RangeError.
 * @param settings parts to leave out, for measuring what each is worth
 * @checked tests/properties/solver-engine
 */
export function* solve(
  model: Model,
  options: SolveOptions,
  settings: RunSettings = {},
): Generator<SolveEvent, SolveResult> {
  const opened = settings.withoutGenerator === true ? null : openProject(model, options.seed);
  if (opened !== null && options.proof === undefined && (options.assumptions ?? []).length === 0) {
    const result = solveProjectAtOnce(model, opened);
    if (result !== null && result.solution !== null) {
      yield { kind: 'incumbent', solution: result.solution, levels: result.levels, conflicts: 0 };
      return result;
    }
  }
  const run = new Run(model, options, settings, opened);
  yield* run.go();
  return run.result();
}
