import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Model } from '@handrail/solver/model/model';
import { finishAtTheLatestEnd } from './finish-at-the-latest-end.ts';
import { numberLines } from './number-lines.ts';

/**
 * Job shop in the usual text form: jobs and machines, then a line a job with machine and duration of each operation in
 * order, machines from 0. Lines with `#` are comments. Minimise the makespan.
 */
export function readJobShop(text: string, name: string): Model {
  const rows = numberLines(text.replace(/^#.*$/gm, ''));
  const [jobs, machines] = rows[0] as [number, number];
  const operations = rows.slice(1, 1 + jobs).map((row) =>
    Array.from({ length: machines }, (_, k) => ({
      machine: row[2 * k] as number,
      duration: row[2 * k + 1] as number,
    })),
  );
  if (operations.length !== jobs || operations.flat().some(({ duration }) => !Number.isInteger(duration))) {
    throw new Error('not a job shop file');
  }
  const horizon = operations.flat().reduce((sum, { duration }) => sum + duration, 0);
  const builder = new ModelBuilder(name, horizon);
  const onMachine: number[][] = Array.from({ length: machines }, () => []);
  const last: number[] = [];
  operations.forEach((chain, job) => {
    let previous: number | null = null;
    for (const [k, { machine, duration }] of chain.entries()) {
      const id = builder.interval(`job ${job + 1} operation ${k + 1}`, duration);
      onMachine[machine]?.push(id);
      if (previous !== null) {
        builder.post({ kind: 'precedence', from: endOf(previous), to: startOf(id), lag: 0, when: [], tag: null });
      }
      previous = id;
    }
    if (previous !== null) last.push(previous);
  });
  for (const ids of onMachine) {
    builder.post({
      kind: 'sequence',
      members: ids.map((interval) => ({ interval, startType: 0, endType: 0 })),
      types: 1,
      transitions: [0],
      first: null,
      last: null,
      transitionTotal: null,
      tag: null,
    });
  }
  finishAtTheLatestEnd(builder, last);
  return builder.build();
}
