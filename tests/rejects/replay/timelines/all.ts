import type { Broken } from '../broken.ts';
import { MOVES } from './moves.ts';
import { ORDERS } from './orders.ts';
import { PEOPLE } from './people.ts';
import { STATES } from './states.ts';
import { STRUCTURE } from './structure.ts';

/** Every broken timeline. */
export const BROKEN: readonly Broken[] = [...STRUCTURE, ...PEOPLE, ...MOVES, ...STATES, ...ORDERS];
