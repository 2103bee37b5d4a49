/**
 * P(Z ≤ x) of a standard normal. Series Φ = ½ + φ(x)(x + x³/3 + x⁵/15 + …) for |x| < 7, to about 1e-14; beyond, 0 or 1.
 * @source [MAR04] section 3
 * @checked tests/reference/proof
 */
export function normalProbability(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  if (x >= 7) return 1;
  if (x <= -7) return 0;
  let term = x;
  let sum = x;
  for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum) && odd < 400; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return 0.5 + (sum * Math.exp(-(x * x) / 2)) / Math.sqrt(2 * Math.PI);
}
