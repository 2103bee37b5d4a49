/** How long hardware may be left in a value, measured against how long it must be left. */
import type { SafeUntil } from '../kinds/kind.ts';

/** tonight: until the crew has slept. next-eva: until somebody is outside again. */
export type Horizon = 'tonight' | 'next-eva';

const LASTS: Readonly<Record<SafeUntil, number>> = { never: 0, tonight: 1, 'next-eva': 2, always: 3 };
const ASKED: Readonly<Record<Horizon, number>> = { tonight: 1, 'next-eva': 2 };

export function lastsUntil(safe: SafeUntil, horizon: Horizon): boolean {
  return LASTS[safe] >= ASKED[horizon];
}
