/** The worst way home over all pairs of progress that can stand side by side, for each stretch between two planned changes. */
import type { ProgressPair } from './progress-network.ts';
import type { Segment } from './segments.ts';
import { type Mode, MODES } from './way-home-state.ts';
import { segmentsOfPair } from './ways-of-pair.ts';
import { NO_WAY, type WaysOfPair, type WorstOfPair } from './worst-of-ways.ts';

export interface Worst extends WorstOfPair {
  /** The segments of the longest. */
  readonly pair: readonly Segment[];
}
export interface WorstAt {
  readonly byMode: Readonly<Record<Mode, Worst>>;
}

/** Whether the way home of every pair is known: only then is the longest of those that are known the longest of all. */
export function isWhole({ unknown, blocked }: Pick<Worst, 'unknown' | 'blocked'>): boolean {
  return unknown.length === 0 && blocked.length === 0;
}

const NONE: Worst = { ...NO_WAY, pair: [] };

/** @param changes planned instants, sorted: stretch i runs from changes[i] to changes[i + 1] */
export function worstOverPairs(
  pairs: readonly ProgressPair[],
  changes: readonly number[],
  waysFrom: (pair: ProgressPair) => WaysOfPair,
): readonly WorstAt[] {
  const worst = changes.slice(0, -1).map((): Record<Mode, Worst> => ({ terminate: NONE, abort: NONE, assist: NONE }));
  for (const pair of pairs) {
    const [from, to] = stretches(changes, pair.fromS, pair.toS);
    if (from >= to) continue;
    const ways = waysFrom(pair);
    const segments = segmentsOfPair(pair);
    for (const mode of MODES) {
      const here = ways[mode].worst;
      for (let at = from; at < to; at++) {
        const row = worst[at] as Record<Mode, Worst>;
        row[mode] = longer(row[mode], here, segments);
      }
    }
  }
  return worst.map((byMode) => ({ byMode }));
}

/** The longer of each; what stands already where the other is not. */
function longer(before: Worst, here: WorstOfPair, segments: readonly Segment[]): Worst {
  const isLonger = here.totalS !== null && (before.totalS === null || here.totalS > before.totalS);
  const isFurther = here.atHatchS !== null && (before.atHatchS === null || here.atHatchS > before.atHatchS);
  const isTowed = here.tow !== null && (before.tow === null || here.tow.towS > before.tow.towS);
  const isUnknown = before.unknown.length === 0 && here.unknown.length > 0;
  const isBlocked = before.blocked.length === 0 && here.blocked.length > 0;
  if (!(isLonger || isFurther || isTowed || isUnknown || isBlocked)) return before;
  const { totalS, way, pair } = isLonger ? { ...here, pair: segments } : before;
  return {
    totalS,
    way,
    pair,
    atHatchS: isFurther ? here.atHatchS : before.atHatchS,
    tow: isTowed ? here.tow : before.tow,
    unknown: isUnknown ? here.unknown : before.unknown,
    blocked: isBlocked ? here.blocked : before.blocked,
  };
}

/** Indices [from, to) of the stretches that meet [fromS, toS). */
function stretches(changes: readonly number[], fromS: number, toS: number): readonly [number, number] {
  let from = 0;
  while (from < changes.length - 1 && (changes[from + 1] as number) <= fromS) from++;
  let to = from;
  while (to < changes.length - 1 && (changes[to] as number) < toS) to++;
  return [from, to];
}
