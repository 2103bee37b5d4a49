/**
 * Chuffed, an independent solver, against enumeration (is the translation right?) and against the engine (is the engine right
 * beyond what enumeration reaches?). Each of its runs takes one to three seconds to start and compile, so that the usual run
 * compares a few; HANDRAIL_ORACLE_SEEDS=200 compares more.
 */
import { solve } from '@handrail/solver/engine/solve';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { checkResult } from '@handrail/solver-checker/check-result';
import { describe, expect, it } from 'vitest';
import { generateCampaign } from '../../../benchmarks/solver/campaign-generator.ts';
import { solveMiniZinc, solveWithChuffed } from '../../../benchmarks/solver/chuffed.ts';
import { toMiniZinc } from '../../../benchmarks/solver/to-minizinc.ts';
import { enumerateSolutions } from './enumerate-solutions.ts';
import { MIDDLE, TINY, randomModel } from './random-model.ts';

const SEEDS = Number(process.env['HANDRAIL_ORACLE_SEEDS'] ?? '6');

describe('on tiny models Chuffed finds the optimum of the translation that enumeration finds in the model', () => {
  it.each([1, 2, 3])('seed %i', async (seed) => {
    const model = randomModel(seed, TINY);
    const truth = enumerateSolutions(model);
    const { value, proved } = await solveMiniZinc(toMiniZinc(model), { timeS: 20 });
    expect({ value, proved }).toEqual({ value: truth.levels?.[0] ?? null, proved: true });
  });
});

describe('on models far beyond enumeration the engine and Chuffed agree on every level', () => {
  it.each(Array.from({ length: SEEDS }, (_, i) => 1000 + i))('seed %i', async (seed) => {
    const model = randomModel(seed, MIDDLE);
    const result = solved(model, seed);
    expect(checkResult(model, result)).toEqual([]);
    expect(['optimal', 'infeasible']).toContain(result.status);
    const fixed: number[] = [];
    for (const level of result.status === 'infeasible' ? [null] : result.levels.map(({ value }) => value)) {
      const { value, proved } = await solveMiniZinc(toMiniZinc(model, fixed), { timeS: 60 });
      expect({ value, proved }).toEqual({ value: level, proved: true });
      if (value !== null) fixed.push(value);
    }
  });
});

describe('on generated campaigns the engine and Chuffed agree on value, finish and travel', () => {
  it.each([1])('12 stints, seed %i', async (seed) => {
    const model = generateCampaign({ stints: 12, seed, named: false });
    const result = solved(model, seed);
    expect(checkResult(model, result)).toEqual([]);
    const { values, isClosed } = await solveWithChuffed(model, { timeS: 60 });
    expect({ isClosed, values }).toEqual({ isClosed: true, values: result.levels.map(({ value }) => value) });
  });
});

function solved(model: Model, seed: number): SolveResult {
  const search = solve(model, { seed, conflictBudget: 200_000 });
  let step = search.next();
  while (step.done !== true) step = search.next();
  return step.value;
}
