import { Fault } from './fault.ts';

/** The closed range in which an engine's formula is meant to be used, in the unit that its message prints. */
export interface Range {
  readonly min: number;
  readonly max: number;
  /** "Pa", "W", "1" for a pure number. */
  readonly unit: string;
}

/**
 * The value itself, if it is a finite number within the closed range; else a fault that names the quantity, the value and
 * the range. Engines call it at their border, so that no NaN and no extrapolation gets inside.
 * @throws Fault `input/out-of-range`
 */
export function requireInRange(name: string, value: number, range: Range): number {
  if (Number.isFinite(value) && value >= range.min && value <= range.max) return value;
  const unit = range.unit === '1' ? '' : ` ${range.unit}`;
  throw new Fault('input/out-of-range', `${name} must be ${range.min} to ${range.max}${unit}, got ${value}${unit}`, {
    values: { name, value, min: range.min, max: range.max, unit: range.unit },
    advice: `give ${name} within ${range.min} to ${range.max}${unit}`,
  });
}
