/**
 * Quantile of a sample: linear interpolation at the median-unbiased plotting position (p (n + 1/3) + 1/3), held within the
 * least and greatest value, so that a few samples never claim more than was seen.
 *
 * @param sorted ascending, at least one value
 * @param p 0 to 1
 * @source [HYNDMAN-FAN] definition 8
 */
export function sampleQuantile(sorted: readonly number[], p: number): number {
  const n = sorted.length;
  const position = Math.min(n, Math.max(1, p * (n + 1 / 3) + 1 / 3));
  const below = Math.floor(position);
  const low = sorted[below - 1] as number;
  const high = sorted[Math.min(n, below + 1) - 1] as number;
  return low + (position - below) * (high - low);
}
