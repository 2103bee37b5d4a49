import type { Clause, Interval, LinearExpression, Linear, Objective, Precedence } from '@handrail/solver/model/model';
import type { View } from '../view.ts';

export function refutesClause({ literals }: Clause, view: View): boolean {
  return literals.every((literal) => view.bounds.isFalse(literal));
}

export function refutesLinear({ expression, bound, when }: Linear, view: View): boolean {
  return view.allTrue(when) && leastSum(expression, view) > bound;
}

/** An objective variable is at least its expression. */
export function refutesObjective(variable: number, { minimise }: Objective, view: View): boolean {
  return leastSum({ terms: minimise.terms, constant: 0 }, view) > view.bounds.max(variable);
}

export function refutesPrecedence({ from, to, lag, when }: Precedence, view: View): boolean {
  if (!view.allTrue(when) || !view.isPresent(from.interval) || !view.isPresent(to.interval)) return false;
  return view.instant(from).min + lag > view.instant(to).max;
}

/** start + duration = end, within the horizon, of an interval that is present for certain. */
export function refutesInterval(id: number, interval: Interval, view: View): boolean {
  if (!view.isPresent(id)) return false;
  const start = view.variable(interval.start);
  const end = view.variable(interval.end);
  const { duration: length } = interval;
  const duration = typeof length === 'number' ? { min: length, max: length } : view.variable(length.variable);
  return (
    start.min + duration.min > end.max ||
    start.max + duration.max < end.min ||
    duration.max < 0 ||
    start.max < 0 ||
    end.min > view.reading.model.horizon
  );
}

/** Least value of a sum within the bounds, terms that share a variable taken together. */
export function leastSum({ terms, constant }: LinearExpression, view: View): number {
  const coefficients = new Map<number, number>();
  let least = constant;
  for (const { coefficient, variable } of terms) {
    const real = view.reading.standIn(variable);
    least += coefficient * real.offset;
    coefficients.set(real.variable, (coefficients.get(real.variable) ?? 0) + coefficient);
  }
  for (const [variable, coefficient] of coefficients) {
    least += coefficient * (coefficient > 0 ? view.bounds.min(variable) : view.bounds.max(variable));
  }
  return least;
}
