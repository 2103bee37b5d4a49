import { solve } from '@handrail/solver/engine/solve';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Literal, Model } from '@handrail/solver/model/model';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { Dice, randomModel } from './random-model.ts';

function run(model: Model, assumptions: readonly Literal[]): SolveResult {
  const steps = solve(model, { seed: 1, conflictBudget: 20_000, assumptions });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The model with each literal as a requirement of its own. */
function withClauses(model: Model, literals: readonly Literal[]): Model {
  const clauses = literals.map((literal) => ({ kind: 'clause' as const, tag: null, literals: [literal] }));
  return { ...model, constraints: [...model.constraints, ...clauses] };
}

describe('assumptions', () => {
  it('give the optimum of the model with them as requirements, or a core that collides by itself', () => {
    let cores = 0;
    for (let seed = 60_000; seed < 60_400; seed++) {
      const model = randomModel(seed);
      const dice = new Dice(seed);
      const booleans = model.variables.flatMap(({ name }, variable) => (name.startsWith('b') ? [variable] : []));
      const assumptions = booleans.map((variable): Literal => ({ variable, holds: dice.chance(50) ? 1 : 0 }));
      const truth = enumerateSolutions(withClauses(model, assumptions));
      const { status, levels, solution, core } = run(model, assumptions);
      expect({ seed, status, values: solution && levels.map(({ value }) => value) }).toEqual({
        seed,
        status: truth.best === null ? 'infeasible' : 'optimal',
        values: truth.levels,
      });
      if (status !== 'infeasible') continue;
      expect(core.every((literal) => assumptions.some((a) => a.variable === literal.variable))).toBe(true);
      expect({ seed, left: enumerateSolutions(withClauses(model, core)).count }).toEqual({ seed, left: 0 });
      if (core.length > 0) cores += 1;
    }
    expect(cores).toBeGreaterThan(20);
  });
});
