/** Models small enough to try every assignment: the engine must find the same optimum, or that there is none. */
import { solve } from '@handrail/solver/engine/solve';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { checkResult } from '@handrail/solver-checker/check-result';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { TINY, randomModel } from '../../reference/solver-oracle/random-model.ts';

const PER_BATCH = 40;
/** Seeds whose models are not tiny enough: found by running, and passed over by the same rule on every machine. */
const NODE_LIMIT = 300_000;

describe('on tiny models that mix constraint kinds, the engine finds what trying everything finds', () => {
  it.each(Array.from({ length: 10 }, (_, batch) => batch * PER_BATCH))('seeds from %i on', (from) => {
    let compared = 0;
    for (let seed = from; seed < from + PER_BATCH; seed++) {
      const model = randomModel(seed, TINY);
      const truth = enumerated(model);
      if (truth === null) continue;
      const result = solved(model, seed);
      const values = result.solution === null ? null : result.levels.map(({ value }) => value);
      expect({ seed, status: result.status, values, faults: checkResult(model, result) }).toEqual({
        seed,
        status: truth.levels === null ? 'infeasible' : 'optimal',
        values: truth.levels,
        faults: [],
      });
      compared += 1;
    }
    expect(compared).toBeGreaterThan(PER_BATCH / 2);
  });
});

function enumerated(model: Model) {
  try {
    return enumerateSolutions(model, NODE_LIMIT);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function solved(model: Model, seed: number): SolveResult {
  const search = solve(model, { seed, conflictBudget: 50_000 });
  let step = search.next();
  while (step.done !== true) step = search.next();
  return step.value;
}
