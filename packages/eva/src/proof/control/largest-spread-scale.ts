/** The largest scale of all spreads at which a plan can still be kept: 0 is the planning figures, 1 the stated bounds. */
export interface SpreadScale {
  /** null: not even for planning figures. */
  readonly scale: number | null;
  /** It holds at the largest scale that was tried. */
  readonly isMost: boolean;
}

/**
 * Bisection: bounds at a smaller scale lie within those at a larger one, so what holds at one holds at every smaller one.
 * @param holds whether the plan can be kept at a scale
 * @param most the largest that is tried
 * @param step the answer is this near to the true one, and below it
 */
export function largestSpreadScale(holds: (scale: number) => boolean, most = 3, step = 0.02): SpreadScale {
  if (!holds(0)) return { scale: null, isMost: false };
  if (holds(most)) return { scale: most, isMost: true };
  let [low, high] = [0, Math.ceil(most / step)];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle * step)) low = middle;
    else high = middle;
  }
  return { scale: Math.round(low * step * 1e6) / 1e6, isMost: false };
}
