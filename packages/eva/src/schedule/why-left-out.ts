/**
 * Why a task is not in: asked of the engine by forcing it in beside the more important tasks that are (the less important ones
 * may help or stay away), and naming what then collides; where that is the wall, by how much it would be missed.
 */
import { solve } from '@handrail/solver/engine/solve';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Model } from '@handrail/solver/model/model';
import type { Task } from '../campaign/campaign.ts';
import { describeTag, isBackground } from './describe-tag.ts';
import { evaModel } from './eva-model.ts';
import { evaProblem, type ProblemInput, WALL_TAG } from './eva-problem.ts';
import { type CollisionOptions, findCollision } from './find-collision.ts';
import { secondsOf } from './grid.ts';
import { waysOut } from './ways-out.ts';

export function whyLeftOut(
  input: ProblemInput,
  task: Task,
  planned: ReadonlySet<string>,
  options: CollisionOptions,
): string {
  const beside = input.tasks.filter(({ id, rank }) => planned.has(id) && rank < task.rank);
  const forced = new Set([...beside, task].map(({ id }) => id));
  const problem = evaProblem({ ...input, forced, beyondWall: true });
  const built = evaModel(problem);
  const screened = built.screened.reasons.get(task.id);
  if (screened !== undefined) return screened;
  const model = {
    ...built.model,
    constraints: [...built.model.constraints].sort((a, b) => weight(a.tag) - weight(b.tag)),
  };
  const collision = findCollision(model, options);
  if (collision === null) return 'no plan with it was found within the search budget; it was not proved impossible';
  if (collision.tags.includes(WALL_TAG) && problem.wall !== null) {
    const finish = earliestFinish(model, built.draft.bothIn, options);
    if (finish !== null) {
      const bothInS = secondsOf(finish.value);
      const how = finish.proved ? 'at the earliest' : 'at the earliest found';
      const past = formatDuration(bothInS - problem.wall.petS);
      return `no room before the wall: with it both are in at ${formatPet(bothInS)} ${how}, ${past} past ${formatPet(problem.wall.petS)} (${problem.wall.cause})`;
    }
  }
  const context = { campaign: input.campaign, hardware: input.hardware, wall: problem.wall };
  const telling = collision.tags.filter((tag) => !isBackground(tag));
  const named = (telling.length > 0 ? telling : collision.tags.filter((tag) => !tag.startsWith('in:'))).slice(0, 5);
  const collides = `it collides with ${named.map((tag) => describeTag(context, tag)).join('; ')}`;
  const ways = waysOut({ ...input, forced }, task, collision.tags, options);
  return ways.length === 0 ? collides : `${collides}. There is a plan with it again with ${ways.join('; or with ')}`;
}

function weight(tag: string | null): number {
  if (tag === null || tag === WALL_TAG) return 0;
  return isBackground(tag) ? 2 : 1;
}

function earliestFinish(
  model: Model,
  bothIn: number,
  { seed, conflictBudget, shouldStop }: CollisionOptions,
): { readonly value: number; readonly proved: boolean } | null {
  const constraints = model.constraints.filter(({ tag }) => tag !== WALL_TAG);
  const minimise = { terms: [{ coefficient: 1, variable: bothIn }], constant: 0 };
  const running = solve(
    { ...model, constraints, objectives: [{ name: 'finish', minimise }] },
    { seed, conflictBudget, ...(shouldStop === undefined ? {} : { shouldStop }) },
  );
  for (;;) {
    const next = running.next();
    if (next.done !== true) continue;
    const [level] = next.value.levels;
    return level === undefined || level.value === null ? null : { value: level.value, proved: level.proved };
  }
}
