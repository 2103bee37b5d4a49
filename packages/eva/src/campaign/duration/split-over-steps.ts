/** The grid of planning figures, seconds. */
export const GRID_S = 10;

/**
 * Shares a planning figure out to steps in proportion to their own figures, on the 10 s grid, so that the shares add up to it
 * exactly. Method: largest remainder. What does not fill a grid step goes to the last step.
 *
 * @param totalS whole seconds ≥ 0
 * @param weights own figure of each step, seconds; all 0 or none known: equal shares
 * @returns as many shares as weights; [] for no steps
 */
export function splitOverSteps(totalS: number, weights: readonly number[]): readonly number[] {
  if (weights.length === 0) return [];
  const sum = weights.reduce((a, b) => a + b, 0);
  const share = (weight: number): number => (sum > 0 ? weight / sum : 1 / weights.length);
  const cells = Math.floor(totalS / GRID_S);
  const exact = weights.map((weight) => cells * share(weight));
  const whole = exact.map(Math.floor);
  const rest = cells - whole.reduce((a, b) => a + b, 0);
  const order = exact
    .map((value, at) => ({ at, remainder: value - Math.floor(value) }))
    .sort((a, b) => b.remainder - a.remainder || a.at - b.at);
  for (const { at } of order.slice(0, rest)) whole[at] = (whole[at] ?? 0) + 1;
  const shares = whole.map((count) => count * GRID_S);
  shares[shares.length - 1] = (shares.at(-1) ?? 0) + (totalS - cells * GRID_S);
  return shares;
}
