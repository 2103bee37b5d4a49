import type { SolveResult } from '../model/answer.ts';
import type { Model, Objective } from '../model/model.ts';
import { ScheduleGenerator } from '../search/generate-schedule.ts';
import { type Project, readProjectOf } from '../search/project.ts';
import { Random } from '../search/random.ts';

/** Schedules to try before the engine is set up. */
const TRIES = 10;

/** A model that is a project, with its generator after a few schedules. */
export interface OpenedProject {
  readonly project: Project;
  readonly generator: ScheduleGenerator;
}

/** null: the model is no project. The generator has made none yet. */
export function openProject(model: Model, seed: number): OpenedProject | null {
  const project = readProjectOf(model);
  if (project === null) return null;
  return { project, generator: new ScheduleGenerator(project, new Random(seed), model.horizon) };
}

/** A project whose longest way is reached by one of a few generated schedules: optimal without any search. null: it was not reached. */
export function solveProjectAtOnce(model: Model, { project, generator }: OpenedProject): SolveResult | null {
  const goal = model.intervals.findIndex(({ start, end }) => start === project.objective || end === project.objective);
  const isEnd = model.intervals[goal]?.end === project.objective;
  const least = (generator.heads()[goal] as number) + (isEnd ? (project.duration[goal] as number) : 0);
  generator.sample(TRIES, least);
  const schedule = generator.best;
  if (schedule === null) return null;
  const values = model.variables.map(({ min }) => min);
  model.intervals.forEach(({ start, end }, id) => {
    values[start] = schedule.start[id] as number;
    values[end] = (schedule.start[id] as number) + (project.duration[id] as number);
  });
  if (values[project.objective] !== least) return null;
  const { name, minimise } = model.objectives[0] as Objective;
  const value = least + minimise.constant;
  return {
    status: 'optimal',
    solution: values,
    levels: [{ objective: name, value, bound: value, proved: true }],
    statistics: { conflicts: 0, decisions: 0, propagations: 0, restarts: 0 },
    core: [],
  };
}
