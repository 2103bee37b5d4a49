/**
 * The engine against published optima of open instance sets. The instances are not part of this project: they are read from
 * the folder in HANDRAIL_BENCH, or from `../shared/bench`, and left out with a note where neither is there.
 * Formats and origins: benchmarks/solver/readers.
 */
import { existsSync } from 'node:fs';
import { solve } from '@handrail/solver/engine/solve';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { checkProof } from '@handrail/solver-checker/check-proof';
import { checkResult } from '@handrail/solver-checker/check-result';
import { describe, expect, it } from 'vitest';
import { benchFolder, findInstances } from '../../../benchmarks/solver/instances.ts';

const isThere = existsSync(benchFolder());
const title = isThere
  ? 'what is proved is what is published'
  : 'no open instances found: set HANDRAIL_BENCH to their folder';

/** A few of each family that take the engine well under a second, infeasible ones among them. */
const CHOSEN = [
  'rcpsp/j30/j301_1.sm',
  'rcpsp/j30/j305_1.sm',
  'rcpsp/j30/j3014_1.sm',
  'rcpsp/j30/j3037_1.sm',
  'rcpsp-max/sm-j10/PSP111.SCH',
  'rcpsp-max/sm-j10/PSP12.SCH',
  'rcpsp-max/sm-j20/PSP5.SCH',
  'rcpsp-max/ubo10/psp2.sch',
  'multi-mode/j10/j1010_1.mm',
  'multi-mode/j10/j1014_4.mm',
  'multi-mode/j10/j1018_6.mm',
];

describe.skipIf(!isThere)(title, () => {
  it.each(CHOSEN)('%s', (path) => {
    const [instance] = findInstances([path]);
    if (instance === undefined || instance.bestKnown === null) throw new Error(`${path} has no published bounds`);
    const model = instance.load();
    const proof = new KeptLines();
    const search = solve(model, { seed: 1, conflictBudget: 20_000, proof });
    let step = search.next();
    while (step.done !== true) step = search.next();
    const result = step.value;
    expect(checkResult(model, result)).toEqual([]);
    const { infeasible, lower, upper } = instance.bestKnown;
    expect(lower).toBe(upper);
    expect({ status: result.status, value: result.levels[0]?.value ?? null }).toEqual({
      status: infeasible ? 'infeasible' : 'optimal',
      value: infeasible ? null : upper,
    });
    expect(checkProof(model, proof)).toMatchObject({ refusal: null, claim: result.status });
  });
});
