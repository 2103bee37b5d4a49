import type { Suit, WindowSet } from '../campaign/campaign.ts';
import type { WorkStretch } from './work-stretch.ts';

/**
 * Stretches cut where a window opens or closes, with the loads that are on in each piece. Windows are taken with their pad, widened: a
 * lamp is on rather too long than too short.
 * @param petZeroUtcMs UTC of PET 0
 */
export function loadsByWindow(
  suit: Suit,
  windows: readonly WindowSet[],
  petZeroUtcMs: number,
  stretches: readonly WorkStretch[],
): readonly WorkStretch[] {
  const burning = suit.loadUse.flatMap(({ load, window }) => {
    const set = windows.find(({ id }) => id === window);
    if (set === undefined) return [];
    const pet = (utcMs: number): number => (utcMs - petZeroUtcMs) / 1000;
    return [{ load, spans: set.intervals.map(([from, to]) => [pet(from) - set.padS, pet(to) + set.padS] as const) }];
  });
  if (burning.length === 0) return stretches;
  const edges = [...new Set(burning.flatMap(({ spans }) => spans.flat()))].sort((a, b) => a - b);
  return stretches.flatMap((stretch) => {
    const cuts = [
      stretch.startS,
      ...edges.filter((edge) => edge > stretch.startS && edge < stretch.endS),
      stretch.endS,
    ];
    return cuts.slice(1).map((endS, index): WorkStretch => {
      const startS = cuts[index] as number;
      const on = burning.filter(({ spans }) => spans.some(([from, to]) => from <= startS && endS <= to));
      return { ...stretch, startS, endS, loads: on.map(({ load }) => load) };
    });
  });
}
