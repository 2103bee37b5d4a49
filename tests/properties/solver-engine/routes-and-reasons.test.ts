import { checkProof } from '@handrail/solver-checker/check-proof';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import { Run } from '@handrail/solver/engine/run';
import { solve } from '@handrail/solver/engine/solve';
import type { SolveEvent, SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { randomModel } from './random-model.ts';
import { randomRoute } from './random-route.ts';

function play(model: Model, seed: number): { events: SolveEvent[]; result: SolveResult } {
  const events: SolveEvent[] = [];
  const steps = solve(model, { seed, conflictBudget: 2000 });
  for (;;) {
    const step = steps.next();
    if (step.done) return { events, result: step.value };
    events.push(step.value);
  }
}

describe('routes through places', () => {
  it('come out as trying every assignment says, with a proof that the checker accepts', () => {
    for (let seed = 0; seed < 60; seed++) {
      const model = randomRoute(seed);
      const truth = enumerateSolutions(model);
      const proof = new KeptLines();
      const run = new Run(model, { seed: 1, proof }, { checksReasons: true });
      for (const _ of run.go());
      const { solution, levels, status } = run.result();
      expect({ seed, values: solution && levels.map(({ value }) => value) }).toEqual({ seed, values: truth.levels });
      if (solution !== null) expect(checkSolution(model, solution)).toEqual([]);
      expect({ seed, refusal: checkProof(model, proof).refusal, status }).toEqual({
        seed,
        refusal: null,
        status: truth.best === null ? 'infeasible' : 'optimal',
      });
    }
  });
});

describe('reasons', () => {
  it('name only what held before the bound that they explain', () => {
    for (let seed = 30_000; seed < 30_600; seed++) {
      const run = new Run(randomModel(seed), { seed: 1, conflictBudget: 5000 }, { checksReasons: true });
      expect(() => {
        for (const _ of run.go());
      }).not.toThrow();
    }
  });
});

describe('the same model, seed and budget', () => {
  it('give the same events, however often', () => {
    for (const seed of [1, 2, 3]) {
      const model = randomModel(500 + seed);
      expect(play(model, seed)).toEqual(play(model, seed));
    }
  });
});
