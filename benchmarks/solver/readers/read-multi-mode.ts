import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { LinearTerm, Model } from '@handrail/solver/model/model';
import { type ProjectJob, readProjectSections } from './read-project-sections.ts';

/**
 * Project scheduling with several modes and non-renewable resources (PSPLIB `.mm`): minimise the makespan.
 * Modes that another one of the same job dominates are left out. @source [KOLISCH-SPRECHER-1997]
 */
export function readMultiMode(text: string, name: string): Model {
  const { jobs, renewable, capacities } = readProjectSections(text);
  const modesOf = jobs.map((job) => undominated(job, renewable, capacities));
  const horizon = modesOf.reduce((sum, modes) => sum + Math.max(...modes.map(({ duration }) => duration)), 0);
  const builder = new ModelBuilder(name, horizon);
  const masters: number[] = [];
  const options: { interval: number; presence: number | null; demands: readonly number[] }[][] = [];
  modesOf.forEach((modes, i) => {
    const durations = modes.map(({ duration }) => duration);
    const [min, max] = [Math.min(...durations), Math.max(...durations)];
    const master = builder.interval(`job ${i + 1}`, min === max ? min : { min, max });
    masters.push(master);
    const only = modes[0];
    if (modes.length === 1 && only !== undefined) {
      options.push([{ interval: master, presence: null, demands: only.demands }]);
      return;
    }
    const copies = modes.map(({ duration, demands }, m) => {
      const presence = builder.boolean(`job ${i + 1} in mode ${m + 1}`);
      const interval = builder.interval(`job ${i + 1} mode ${m + 1}`, duration, { presence });
      return { interval, presence: presence.variable, demands };
    });
    options.push(copies);
    builder.post({ kind: 'alternative', master, options: copies.map(({ interval }) => interval), tag: null });
  });
  jobs.forEach(({ successors }, i) => {
    for (const next of successors) {
      const [from, to] = [endOf(masters[i] as number), startOf(masters[next] as number)];
      builder.post({ kind: 'precedence', from, to, lag: 0, when: [], tag: null });
    }
  });
  capacities.forEach((capacity, resource) => {
    const users = options.flat().filter(({ demands }) => (demands[resource] ?? 0) > 0);
    if (resource < renewable) {
      const members = users.map(({ interval, demands }) => ({ interval, demand: demands[resource] as number }));
      builder.post({ kind: 'cumulative', capacity, members, tag: null });
      // Whatever its mode, a job takes at least its least demand: a redundant view that does not wait for a choice.
      const least = options.flatMap((of, i) => {
        const demand = Math.min(...of.map(({ demands }) => demands[resource] ?? 0));
        return demand > 0 ? [{ interval: masters[i] as number, demand }] : [];
      });
      if (least.length > 1) builder.post({ kind: 'cumulative', capacity, members: least, tag: null });
      return;
    }
    let constant = 0;
    const terms: LinearTerm[] = [];
    for (const { presence, demands } of users) {
      if (presence === null) constant += demands[resource] as number;
      else terms.push({ coefficient: demands[resource] as number, variable: presence });
    }
    builder.post({ kind: 'linear', expression: { terms, constant }, bound: capacity, when: [], tag: null });
  });
  const sink = builder.intervalAt(masters.at(-1) as number);
  builder.minimise('makespan', { terms: [{ coefficient: 1, variable: sink.end }], constant: 0 });
  return builder.build();
}

/** Without the modes that cannot run at all and those that are no better than another one in any respect. */
function undominated(job: ProjectJob, renewable: number, capacities: readonly number[]): ProjectJob['modes'] {
  const runnable = job.modes.filter(({ demands }) =>
    demands.every((d, r) => r >= renewable || d <= (capacities[r] ?? 0)),
  );
  const atMost = (a: ProjectJob['modes'][number], b: ProjectJob['modes'][number]) =>
    a.duration <= b.duration && a.demands.every((demand, r) => demand <= (b.demands[r] as number));
  const kept = runnable.filter(
    (mode, i) => !runnable.some((other, k) => k !== i && atMost(other, mode) && (!atMost(mode, other) || k < i)),
  );
  return kept.length > 0 ? kept : job.modes;
}
