import type { SourcedValue } from '@handrail/quantity/sourced-value';

/**
 * `worst` takes every constant at the end that leaves least, `best` at the end that leaves most: together they bound the answer,
 * and are wider than chance would make it.
 */
export type SupplyCase = 'worst' | 'likely' | 'best';
export const SUPPLY_CASES: readonly SupplyCase[] = ['worst', 'likely', 'best'];

/** The end of a constant that uses supplies up: high in the worst case. */
export function using(value: SourcedValue, supplyCase: SupplyCase): number {
  return supplyCase === 'worst' ? value.high : supplyCase === 'best' ? value.low : value.likely;
}

/** The end of a constant that provides supplies: low in the worst case. */
export function providing(value: SourcedValue, supplyCase: SupplyCase): number {
  return supplyCase === 'worst' ? value.low : supplyCase === 'best' ? value.high : value.likely;
}

export function byCase<T>(of: (supplyCase: SupplyCase) => T): Readonly<Record<SupplyCase, T>> {
  return { worst: of('worst'), likely: of('likely'), best: of('best') };
}
