/**
 * What writing the proof costs, and what its check does: the same instances with a log that is kept and without one, in turn, in
 * processor time of the same run. The answers must be the same, and the checker must accept each proof.
 *
 *   npx tsx benchmarks/solver/proof-cost.ts PATH… [--rounds N]
 */
import assert from 'node:assert/strict';
import { parseArgs } from 'node:util';
import { solve } from '@handrail/solver/engine/solve';
import type { SolveResult } from '@handrail/solver/model/answer';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { checkProof } from '@handrail/solver-checker/check-proof';
import { instancesBehind } from './instances-behind.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { rounds: { type: 'string', default: '5' } },
});
const paths =
  positionals.length > 0
    ? positionals
    : ['jobshop/ft10.jss', 'jobshop/la16.jss', 'rcpsp/j30/j3045_*', 'campaigns:25:2'];
const rounds = Number(values.rounds);

function timed<T>(run: () => T): readonly [T, number] {
  const before = process.cpuUsage();
  const made = run();
  const { user, system } = process.cpuUsage(before);
  return [made, (user + system) / 1000];
}
const median = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[times.length >> 1] ?? 0;

let [plain, logged] = [0, 0];
for (const instance of instancesBehind(paths, 1)) {
  const model = instance.load();
  const answer = (proof: KeptLines | null): SolveResult => {
    const search = solve(model, { seed: 1, ...(proof === null ? {} : { proof }) });
    let next = search.next();
    while (next.done !== true) next = search.next();
    return next.value;
  };
  const times: { readonly without: number; readonly kept: number }[] = [];
  let [lines, found]: [KeptLines, SolveResult | null] = [new KeptLines(), null];
  for (let round = 0; round <= rounds; round++) {
    const [bare, without] = timed(() => answer(null));
    const log = new KeptLines();
    const [told, kept] = timed(() => answer(log));
    assert.deepEqual(
      told.levels.map(({ value, proved }) => [value, proved]),
      bare.levels.map(({ value, proved }) => [value, proved]),
      instance.name,
    );
    // The first round warms up.
    if (round > 0) times.push({ without, kept });
    [lines, found] = [log, told];
  }
  const [verdict, checkMs] = timed(() => checkProof(model, lines));
  assert.equal(verdict.refusal, null, instance.name);
  assert.equal(verdict.claim, found?.status, instance.name);
  const [without, kept] = [median(times.map((one) => one.without)), median(times.map((one) => one.kept))];
  plain += without;
  logged += kept;
  console.log(
    `${instance.name}: ${without.toFixed(1)} ms, with the proof ${kept.toFixed(1)} ms (${(kept / without).toFixed(2)} times), ${lines.length} lines, checked in ${checkMs.toFixed(0)} ms`,
  );
}
console.log(`all: with the proof ${(logged / plain).toFixed(2)} times as long (${plain.toFixed(0)} ms without)`);
