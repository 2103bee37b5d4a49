/**
 * Which requirements collide: a set of tags from which none can be taken away without the collision going too, found by
 * taking tags away in halves and asking the engine again (deletion by bisection). Within its budget of conflicts per question;
 * a question left open counts as "still needed", so the set may then be larger than need be, which `isIrreducible` says.
 */
import { solve } from '@handrail/solver/engine/solve';
import type { Model } from '@handrail/solver/model/model';

export interface Collision {
  readonly tags: readonly string[];
  readonly isIrreducible: boolean;
}

export interface CollisionOptions {
  readonly seed: number;
  /** Conflicts per question. */
  readonly conflictBudget: number;
  readonly shouldStop?: () => boolean;
}

/** null: the model has a solution, or it could not be told within the budget. */
export function findCollision(model: Model, options: CollisionOptions): Collision | null {
  const tags = [...new Set(model.constraints.flatMap(({ tag }) => (tag === null ? [] : [tag])))];
  if (ask(model, new Set(tags), options) !== 'infeasible') return null;
  let isIrreducible = true;
  const stillCollide = (kept: readonly string[]) => {
    if (options.shouldStop?.() === true) {
      isIrreducible = false;
      return false;
    }
    const answer = ask(model, new Set(kept), options);
    if (answer === 'unknown') isIrreducible = false;
    return answer === 'infeasible';
  };
  return { tags: quickXplain([], false, tags, stillCollide), isIrreducible };
}

/** Junker's preferred explanations: splits in halves; tags early in the list are kept rather than later ones. */
function quickXplain(
  background: readonly string[],
  isGrown: boolean,
  tags: readonly string[],
  collide: (kept: readonly string[]) => boolean,
): string[] {
  if (isGrown && collide(background)) return [];
  if (tags.length <= 1) return [...tags];
  const half = Math.ceil(tags.length / 2);
  const first = tags.slice(0, half);
  const second = tags.slice(half);
  const fromSecond = quickXplain([...background, ...first], true, second, collide);
  const fromFirst = quickXplain([...background, ...fromSecond], fromSecond.length > 0, first, collide);
  return [...fromFirst, ...fromSecond];
}

/** Whether a plan was found within the budget; "no" and "cannot tell" are both false. */
export function isFeasible(model: Model, options: CollisionOptions): boolean {
  return (
    ask(model, new Set(model.constraints.flatMap(({ tag }) => (tag === null ? [] : [tag]))), options) === 'feasible'
  );
}

function ask(
  model: Model,
  kept: ReadonlySet<string>,
  options: CollisionOptions,
): 'feasible' | 'infeasible' | 'unknown' {
  const constraints = model.constraints.filter(({ tag }) => tag === null || kept.has(tag));
  const { seed, conflictBudget, shouldStop } = options;
  const running = solve(
    { ...model, constraints, objectives: [] },
    { seed, conflictBudget, ...(shouldStop === undefined ? {} : { shouldStop }) },
  );
  for (;;) {
    const next = running.next();
    if (next.done !== true) {
      if (next.value.kind === 'incumbent') return 'feasible';
      continue;
    }
    const { status } = next.value;
    return status === 'infeasible' || status === 'unknown' ? status : 'feasible';
  }
}
