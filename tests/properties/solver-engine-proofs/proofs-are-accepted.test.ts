/** What the engine claims it must be able to show: each of its proofs, replayed by other code against the model alone. */
import { solve } from '@handrail/solver/engine/solve';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { checkProof } from '@handrail/solver-checker/check-proof';
import { describe, expect, it } from 'vitest';
import { MIDDLE, type RandomModelSize, TINY, randomModel } from '../../reference/solver-oracle/random-model.ts';

function shown(model: Model, seed: number): { result: SolveResult; proof: KeptLines } {
  const proof = new KeptLines();
  const search = solve(model, { seed, conflictBudget: 20_000, proof });
  let step = search.next();
  while (step.done !== true) step = search.next();
  return { result: step.value, proof };
}

/** A lane or a resource that both a task and one way of doing it are named in: not something a caller means. */
function namesMasterBesideOption(model: Model): boolean {
  return model.constraints.some((alternative) => {
    if (alternative.kind !== 'alternative') return false;
    return model.constraints.some((c) => {
      if (c.kind !== 'sequence') return false;
      const named = c.members.map(({ interval }) => interval);
      return named.includes(alternative.master) && alternative.options.some((option) => named.includes(option));
    });
  });
}

function compare(from: number, size: RandomModelSize, count: number): void {
  for (let seed = from; seed < from + count; seed++) {
    const model = randomModel(seed, size);
    if (namesMasterBesideOption(model)) continue;
    const { result, proof } = shown(model, seed);
    const verdict = checkProof(model, proof);
    expect({ seed, refusal: verdict.refusal, claim: verdict.claim }).toEqual({
      seed,
      refusal: null,
      claim: result.status === 'optimal' || result.status === 'infeasible' ? result.status : 'open',
    });
    if (result.status === 'optimal') expect(verdict.closed).toEqual(result.levels.map(({ value }) => value));
  }
}

describe('every proof of the engine is accepted, and shows what the engine claims', () => {
  it.each([0, 100, 200, 300, 400])('tiny models, seeds from %i on', (from) => compare(from, TINY, 100));
  it.each([1000, 1050, 1100, 1150])('middling models, seeds from %i on', (from) => compare(from, MIDDLE, 50));
});
