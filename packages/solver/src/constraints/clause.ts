import type { Compilation } from '../engine/compilation.ts';
import type { Clause } from '../model/model.ts';

/** At least one literal holds. Inference `clause`. */
export function postClause(c: Clause, index: number, at: Compilation): void {
  at.kernel.postClause(
    c.literals.map((l) => at.literal(l)),
    index,
  );
}
