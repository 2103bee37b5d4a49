import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Model } from '@handrail/solver/model/model';

/**
 * Project scheduling with minimum and maximum time lags between starts (ProGen/max `.SCH`): minimise the makespan.
 * The first line gives the number of jobs without the two milestones; then a line a job with its successors and the lags in
 * brackets (a negative lag back is a maximum lag); then a line a job with duration and demands; then the capacities.
 * @source [SCHWINDT-1996]
 */
export function readProjectMax(text: string, name: string): Model {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const fields = lines.map((line) => line.trim().split(/\s+/));
  const count = Number(fields[0]?.[0]) + 2;
  const jobs = fields.slice(1, 1 + count).map((row) => {
    const successors = Number(row[2]);
    const lag = (k: number) => Number(row[3 + successors + k]?.replace(/[[\]]/g, ''));
    return Array.from({ length: successors }, (_, k) => ({ to: Number(row[3 + k]), lag: lag(k) }));
  });
  const requests = fields.slice(1 + count, 1 + 2 * count).map((row) => row.map(Number));
  const durations = requests.map((row) => row[2] as number);
  const capacities = (fields[1 + 2 * count] ?? []).map(Number);
  if (jobs.length !== count || requests.length !== count || durations.some(Number.isNaN)) {
    throw new Error('not a project file with time lags');
  }
  // Jobs one after the other, each followed by its longest wait, fit in this: a semi-active optimum is not longer.
  const longest = jobs.map((arcs, i) => Math.max(durations[i] as number, ...arcs.map(({ lag }) => lag)));
  const builder = new ModelBuilder(
    name,
    longest.reduce((sum, wait) => sum + wait, 0),
  );
  const ids = durations.map((duration, i) => builder.interval(`job ${i}`, duration));
  jobs.forEach((arcs, i) => {
    for (const { to, lag } of arcs) {
      const [a, b] = [startOf(ids[i] as number), startOf(ids[to] as number)];
      builder.post({ kind: 'precedence', from: a, to: b, lag, when: [], tag: null });
    }
  });
  capacities.forEach((capacity, resource) => {
    const members = requests.flatMap((row, i) => {
      const demand = row[3 + resource] as number;
      return demand > 0 ? [{ interval: ids[i] as number, demand }] : [];
    });
    builder.post({ kind: 'cumulative', capacity, members, tag: null });
  });
  const sink = ids.at(-1) as number;
  for (const id of ids.slice(0, -1)) {
    builder.post({ kind: 'precedence', from: endOf(id), to: startOf(sink), lag: 0, when: [], tag: null });
  }
  const variable = builder.intervalAt(sink).start;
  builder.minimise('makespan', { terms: [{ coefficient: 1, variable }], constant: 0 });
  return builder.build();
}
