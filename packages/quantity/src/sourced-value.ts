import { Fault } from './fault.ts';

/**
 * A constant that somebody may question: its likely value, the least and greatest that are still believed, and where it
 * comes from. An exact figure has all three equal. The unit stands in the name of the field that holds it.
 */
export interface SourcedValue {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** "[KEY] section", "operator", "common practice". Never empty. */
  readonly source: string;
}

/** A figure given without a spread. */
export function exactly(value: number, source: string): SourcedValue {
  return between(value, value, value, source);
}

/**
 * A figure with its spread.
 * @throws Fault `input/band-out-of-order` unless low ≤ likely ≤ high, `input/source-missing` for an empty source.
 */
export function between(low: number, likely: number, high: number, source: string): SourcedValue {
  if (!(low <= likely && likely <= high)) {
    throw new Fault('input/band-out-of-order', `a band must be low ≤ likely ≤ high, got ${low}, ${likely}, ${high}`, {
      values: { low, likely, high, source },
    });
  }
  if (source.trim() === '')
    throw new Fault('input/source-missing', `the value ${likely} has no source`, { values: { likely } });
  return { low, likely, high, source };
}
