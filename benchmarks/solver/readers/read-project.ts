import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Model } from '@handrail/solver/model/model';
import { readProjectSections } from './read-project-sections.ts';

/** Single-mode resource-constrained project scheduling (PSPLIB `.sm`): minimise the makespan. @source [KOLISCH-SPRECHER-1997] */
export function readProject(text: string, name: string): Model {
  const { jobs, capacities } = readProjectSections(text);
  const horizon = jobs.reduce((sum, job) => sum + (job.modes[0]?.duration ?? 0), 0);
  const builder = new ModelBuilder(name, horizon);
  const ids = jobs.map((job, i) => builder.interval(`job ${i + 1}`, job.modes[0]?.duration ?? 0));
  jobs.forEach(({ successors }, i) => {
    for (const next of successors) {
      const [from, to] = [endOf(ids[i] as number), startOf(ids[next] as number)];
      builder.post({ kind: 'precedence', from, to, lag: 0, when: [], tag: null });
    }
  });
  capacities.forEach((capacity, resource) => {
    const members = jobs.flatMap(({ modes }, i) => {
      const demand = modes[0]?.demands[resource] ?? 0;
      return demand > 0 ? [{ interval: ids[i] as number, demand }] : [];
    });
    builder.post({ kind: 'cumulative', capacity, members, tag: null });
  });
  const sink = builder.intervalAt(ids.at(-1) as number);
  builder.minimise('makespan', { terms: [{ coefficient: 1, variable: sink.end }], constant: 0 });
  return builder.build();
}
