/** The engine against optima that others have published (SOURCE.md), and its proofs against the checker. */
import { solve } from '@handrail/solver/engine/solve';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { checkProof } from '@handrail/solver-checker/check-proof';
import { checkResult } from '@handrail/solver-checker/check-result';
import { describe, expect, it } from 'vitest';
import { readJobShop } from '../../../benchmarks/solver/readers/read-job-shop.ts';
import { publishedJobShops } from './published-job-shops.ts';

describe('the makespan proved optimal is the published one', () => {
  it.each(publishedJobShops)('$name: $optimum', ({ name, optimum, table }) => {
    const model = readJobShop(table, name);
    const proof = new KeptLines();
    const search = solve(model, { seed: 1, conflictBudget: 60_000, proof });
    let step = search.next();
    while (step.done !== true) step = search.next();
    const result = step.value;
    expect(checkResult(model, result)).toEqual([]);
    expect({ status: result.status, makespan: result.levels[0]?.value }).toEqual({
      status: 'optimal',
      makespan: optimum,
    });
    const verdict = checkProof(model, proof);
    expect({ refusal: verdict.refusal, claim: verdict.claim, closed: verdict.closed }).toEqual({
      refusal: null,
      claim: 'optimal',
      closed: [optimum],
    });
  });
});
