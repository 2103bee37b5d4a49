/**
 * npm run bench:solver -- PATH… [--time S] [--conflicts N] [--seed N] [--every N] [--cpu] [--json] [--chuffed] [--proof] [--without PART…]
 *
 * PATH is an instance, a folder, a pattern with `*`, or `campaigns:SIZE[:SEEDS[:named]]` for generated ones. Every solution is checked
 * by the independent checker and held against published bounds; the exit code is 1 when anything contradicts. Times are of one core,
 * after a warm-up; the first solve of the process is reported as well.
 * With `--cpu` limits and times are processor time of the process. `--proof` has every claim proved and the proof replayed: the
 * engine's time then includes writing it. `--chuffed` solves each model with Chuffed as well, level by level, in the same run; its
 * time is wall time, so that a ratio means something on an otherwise idle machine and without `--cpu`. `--every 20` takes each
 * twentieth instance. `--without circles` leaves a part of the engine out; the parts are those of engine/run-settings.
 */
import { parseArgs } from 'node:util';
import { type ChuffedLevels, solveWithChuffed } from './chuffed.ts';
import type { Instance } from './instances.ts';
import { instancesBehind } from './instances-behind.ts';
import { isClosed } from './judge.ts';
import { partNamed } from './part-names.ts';
import { type BenchRecord, bugs, recordLine, summaryLines } from './report.ts';
import { type SolveLimits, solveInstance } from './solve-instance.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    time: { type: 'string', default: '60' },
    conflicts: { type: 'string' },
    seed: { type: 'string', default: '1' },
    cpu: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
    chuffed: { type: 'boolean', default: false },
    proof: { type: 'boolean', default: false },
    every: { type: 'string', default: '1' },
    without: { type: 'string', multiple: true, default: [] },
  },
});
if (positionals.length === 0) {
  console.error(
    'usage: npm run bench:solver -- PATH… [--time S] [--conflicts N] [--seed N] [--every N] [--cpu] [--json] [--chuffed] [--proof] [--without PART…]',
  );
  process.exit(2);
}
const limits: SolveLimits = {
  timeS: Number(values.time),
  seed: Number(values.seed),
  clock: values.cpu ? 'cpu' : 'wall',
  withProof: values.proof,
  settings: Object.fromEntries(values.without.map((name) => [partNamed(name), true])),
  ...(values.conflicts === undefined ? {} : { conflicts: Number(values.conflicts) }),
};
const say = values.json ? console.error : console.log;
const instances = instancesBehind(positionals, Number(values.every));

const first = instances[0] as Instance;
const cold = solveInstance(first, { ...limits, timeS: Math.min(limits.timeS, 10) }).outcome;
say(`cold: ${first.name}, first solve of the process, ${cold.status} after ${cold.ms.toFixed(1)} ms`);
const warm = warmUp(first);
say(`warm: the same again, ${isClosed(warm) ? '' : 'stopped '}after ${warm.ms.toFixed(1)} ms`);

const records: BenchRecord[] = [];
for (const instance of instances) {
  const { outcome, model } = solveInstance(instance, limits);
  const chuffed: ChuffedLevels | null = values.chuffed ? await solveWithChuffed(model, { timeS: limits.timeS }) : null;
  const record = { instance, outcome, chuffed };
  records.push(record);
  say(recordLine(record));
  if (values.json) {
    const { name, set, sense, bestKnown } = instance;
    console.log(JSON.stringify({ name, set, sense, bestKnown, outcome, chuffed, bugs: bugs(record) }));
  }
}
say('');
for (const set of new Set(records.map(({ instance }) => instance.set))) {
  for (const line of summaryLines(
    set,
    records.filter(({ instance }) => instance.set === set),
  ))
    say(line);
}
process.exitCode = records.some((record) => bugs(record).length > 0) ? 1 : 0;

/** A few short solves, so that what follows runs compiled. Gives the last one. */
function warmUp(instance: Instance) {
  const begin = performance.now();
  const brief = { ...limits, timeS: Math.min(limits.timeS, 1), conflicts: 2000 };
  let { outcome } = solveInstance(instance, brief);
  for (let i = 0; i < 20 && performance.now() - begin < 1500; i++) ({ outcome } = solveInstance(instance, brief));
  return outcome;
}
