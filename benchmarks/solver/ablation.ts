/**
 * npm run bench:solver:ablation -- PATH… [--time S] [--every N]
 *
 * What each part of the engine gains: the same instances with everything, then with each part left out in turn. An instance that is
 * not closed counts with its limit. Values of closed instances must agree, else the exit code is 1. Times are processor seconds.
 */
import { parseArgs } from 'node:util';
import { PARTS } from '@handrail/solver/engine/run-settings';
import { instancesBehind } from './instances-behind.ts';
import { isClosed } from './judge.ts';
import { partName } from './part-names.ts';
import { solveInstance } from './solve-instance.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { time: { type: 'string', default: '20' }, every: { type: 'string', default: '1' } },
});
const timeS = Number(values.time);
const instances = instancesBehind(positionals, Number(values.every));
// So that the first row is not the one that pays for compiling.
for (const instance of instances) solveInstance(instance, { timeS: 1, seed: 1, clock: 'cpu', conflicts: 2000 });
const truth = new Map<string, string>();
console.log('| left out | closed | total time | over everything | first level, mean over best seen |');
console.log('| --- | --- | --- | --- | --- |');
let whole = 0;
const best = new Map<string, number>();
for (const part of [null, ...PARTS]) {
  let closed = 0;
  let totalMs = 0;
  const gaps: number[] = [];
  for (const instance of instances) {
    const settings = part === null ? {} : { [part]: true };
    const { outcome } = solveInstance(instance, { timeS, seed: 1, clock: 'cpu', settings });
    if (outcome.faults.length > 0) throw new Error(`${instance.name} ${part ?? ''}: ${outcome.faults.join('; ')}`);
    totalMs += isClosed(outcome) ? outcome.ms : timeS * 1000;
    const first = outcome.levels[0]?.value ?? null;
    if (first !== null) {
      const seen = Math.min(best.get(instance.name) ?? first, first);
      best.set(instance.name, seen);
      gaps.push(first === seen ? 0 : (first - seen) / Math.max(1, Math.abs(seen)));
    }
    if (!isClosed(outcome)) continue;
    closed++;
    const answer = outcome.levels.map(({ value }) => value).join(' ');
    if ((truth.get(instance.name) ?? answer) !== answer) {
      console.error(`${instance.name}: ${answer} ${part ?? ''}, ${truth.get(instance.name)} otherwise`);
      process.exitCode = 1;
    }
    truth.set(instance.name, answer);
  }
  if (part === null) whole = totalMs;
  const gap = (100 * gaps.reduce((sum, one) => sum + one, 0)) / Math.max(1, gaps.length);
  console.log(
    `| ${part === null ? 'nothing' : partName(part)} | ${closed} of ${instances.length} | ${(totalMs / 1000).toFixed(1)} s | ${(totalMs / whole).toFixed(2)} | ${gap.toFixed(2)} % |`,
  );
}
