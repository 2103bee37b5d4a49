import { Fault } from '@handrail/quantity/fault';

/**
 * Passes a number that lies in [min, max] and refuses every other, NaN included.
 * The message names the quantity, what was given and the range, because a silent clamp would hide a typing mistake.
 * @throws Fault `sky/out-of-range`
 */
export function inRange(what: string, value: number, min: number, max: number, unit: string): number {
  if (value >= min && value <= max) return value;
  const suffix = unit === '' ? '' : ` ${unit}`;
  throw new Fault('sky/out-of-range', `${what} is ${value}${suffix}; it must lie between ${min} and ${max}${suffix}`, {
    values: { what, value, min, max, unit },
  });
}

/** 1957-10-04T00:00Z to 2057-01-01T00:00Z: the years that a two-digit element year can mean. */
export const EARLIEST_UTC_MS = -386_380_800_000;
export const LATEST_UTC_MS = 2_745_446_400_000;

export function instantInRange(what: string, utcMs: number): number {
  if (utcMs >= EARLIEST_UTC_MS && utcMs <= LATEST_UTC_MS) return utcMs;
  throw new Fault(
    'sky/out-of-range',
    `${what} is ${Number.isFinite(utcMs) ? new Date(utcMs).toISOString() : utcMs}; it must lie between 1957-10-04 and 2057-01-01 UTC`,
    { values: { what, value: utcMs, min: EARLIEST_UTC_MS, max: LATEST_UTC_MS, unit: 'UTC ms' } },
  );
}

/** Refuses an interval that is empty, reversed, or longer than `maxDays`. */
export function intervalInRange(startUtcMs: number, endUtcMs: number, maxDays: number): void {
  instantInRange('the start of the interval', startUtcMs);
  instantInRange('the end of the interval', endUtcMs);
  inRange('the length of the interval', (endUtcMs - startUtcMs) / 86_400_000, 1e-9, maxDays, 'd');
}
