import type { Compilation } from '../engine/compilation.ts';
import { NO_OWNER } from '../engine/store.ts';
import type { Linear } from '../model/model.ts';
import { LinearPropagator } from '../propagators/linear.ts';

/** Σ coefficient·variable + constant ≤ bound under conditions. Inference `linear`. */
export function postLinear(c: Linear, index: number, at: Compilation): void {
  const conditions = [...new Set(c.when.map((l) => at.literal(l)))];
  if (conditions.some((l) => conditions.includes(l ^ 1))) return;
  postSum(c.expression.terms, c.bound - c.expression.constant, conditions, index, 'linear', at);
}

/** Σ coefficient·variable ≤ bound, terms on one engine variable taken together. */
export function postSum(
  terms: readonly { readonly coefficient: number; readonly variable: number }[],
  bound: number,
  conditions: readonly number[],
  index: number,
  label: string,
  at: Compilation,
  extra: readonly { readonly coefficient: number; readonly engineVariable: number }[] = [],
): void {
  const sums = new Map<number, number>();
  let limit = bound;
  for (const { coefficient, variable } of terms) {
    const term = at.term(variable);
    limit -= coefficient * term.offset;
    sums.set(term.variable, (sums.get(term.variable) ?? 0) + coefficient);
  }
  for (const { coefficient, engineVariable } of extra) {
    sums.set(engineVariable, (sums.get(engineVariable) ?? 0) + coefficient);
  }
  const present = [...sums].filter(([, coefficient]) => coefficient !== 0);
  new LinearPropagator(
    at.kernel,
    present.map(([variable, coefficient]) => (coefficient > 0 ? 2 * variable : 2 * variable + 1)),
    present.map(([, coefficient]) => Math.abs(coefficient)),
    limit,
    conditions,
    NO_OWNER,
    index,
    label,
  );
}
