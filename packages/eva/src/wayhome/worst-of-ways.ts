/** Several ways home that may each be the one, and the worst of them. */
import type { WayHome } from './way-home-plan.ts';
import type { Mode } from './way-home-state.ts';

export interface WorstOfPair {
  /** Longest of those that are known; null: none is. */
  readonly totalS: number | null;
  readonly way: WayHome | null;
  /** Longest until anybody is at the hatch, over the same ways; null: none is known. */
  readonly atHatchS: number | null;
  /** The one of them in which somebody is towed for the longest; null: nobody is. */
  readonly tow: { readonly towS: number; readonly way: WayHome } | null;
  /** Somebody may stand where nothing is known, or where no safe stop is in reach. */
  readonly unknown: readonly string[];
  readonly blocked: WayHome['blocked'];
}
export const NO_WAY: WorstOfPair = { totalS: null, way: null, atHatchS: null, tow: null, unknown: [], blocked: [] };

/** All that can be while people are in these segments, each once, and the worst of it. */
export type WaysOfPair = Readonly<Record<Mode, { readonly all: readonly WayHome[]; readonly worst: WorstOfPair }>>;

export function worstOf(found: readonly WayHome[]): WorstOfPair {
  let { totalS, way, atHatchS, tow, unknown, blocked } = NO_WAY;
  for (const one of found) {
    for (const person of one.people) if (atHatchS === null || person.atHatchS > atHatchS) atHatchS = person.atHatchS;
    if (one.towS !== null && (tow === null || one.towS > tow.towS)) tow = { towS: one.towS, way: one };
    if (one.totalS === null) {
      if (unknown.length === 0) unknown = one.unknown;
      if (blocked.length === 0) blocked = one.blocked;
    } else if (totalS === null || one.totalS > totalS) [totalS, way] = [one.totalS, one];
  }
  return { totalS, way, atHatchS, tow, unknown, blocked };
}
