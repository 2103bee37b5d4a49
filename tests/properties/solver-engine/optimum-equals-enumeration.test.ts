import { checkSolution } from '@handrail/solver-checker/check-solution';
import { solve } from '@handrail/solver/engine/solve';
import type { SolveOptions, SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { ALL_KINDS, randomModel } from './random-model.ts';

function run(model: Model, options: SolveOptions): SolveResult {
  const steps = solve(model, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (step.value.kind === 'incumbent') expect(checkSolution(model, step.value.solution)).toEqual([]);
  }
}

/** Compare with trying every assignment; returns how many models had a solution. */
function compare(first: number, count: number, kinds = ALL_KINDS): number {
  let feasible = 0;
  for (let seed = first; seed < first + count; seed++) {
    const model = randomModel(seed, kinds);
    const truth = enumerateSolutions(model);
    const found = run(model, { seed: 1, conflictBudget: 20_000 });
    const values = found.solution === null ? null : found.levels.map(({ value }) => value);
    expect({ seed, status: found.status, values }).toEqual({
      seed,
      status: truth.best === null ? 'infeasible' : 'optimal',
      values: truth.levels,
    });
    if (truth.best !== null) feasible += 1;
  }
  return feasible;
}

describe('the engine finds the optimum that trying every assignment finds', () => {
  it('on tiny models that mix every kind of constraint', () => {
    expect(compare(10_000, 1000)).toBeGreaterThan(300);
  });

  it.each(ALL_KINDS)('on tiny models of the kind %s alone', (kind) => {
    expect(compare(20_000, 150, [kind])).toBeGreaterThan(20);
  });
});
