/** A time in which cooling runs steadily. */
export interface HeatPiece {
  readonly startS: number;
  readonly endS: number;
  /** Heat carried off by the feed water, J. */
  readonly removedJ: number;
  /** Heat stored in the body at `endS`, J; never negative: getting cold is not modelled here. */
  readonly storedJ: number;
}

/**
 * One stretch of steady heat as one or two pieces of steady cooling. While heat is stored the cooling runs at its most; once it is worked
 * off the cooling only follows the heat that arises, so the water curve has a kink there.
 * @param heatW heat that arises in the suit; negative where it loses more than it makes: then nothing is carried off
 */
export function bodyHeat(
  heatW: number,
  removalMostW: number,
  startS: number,
  endS: number,
  storedAtStartJ: number,
): readonly HeatPiece[] {
  const excessW = heatW - removalMostW;
  const atMost = (toS: number, storedJ: number): HeatPiece => ({
    startS,
    endS: toS,
    removedJ: removalMostW * (toS - startS),
    storedJ,
  });
  const workedOffS = excessW < 0 ? startS + storedAtStartJ / -excessW : Number.POSITIVE_INFINITY;
  if (workedOffS >= endS) return [atMost(endS, storedAtStartJ + excessW * (endS - startS))];
  const following = { startS: workedOffS, endS, removedJ: Math.max(0, heatW) * (endS - workedOffS), storedJ: 0 };
  return storedAtStartJ === 0 ? [following] : [atMost(workedOffS, 0), following];
}
