import { requireInRange } from '@handrail/quantity/in-range';

/** Lanczos coefficients, g = 7, n = 9: relative accuracy about 1e-15 for x > 0.5. */
const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function for x ≥ 0.5. */
export function logGamma(x: number): number {
  requireInRange('x', x, { min: 0.5, max: 1e12, unit: '1' });
  let sum = LANCZOS[0] as number;
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] as number) / (x - 1 + i);
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Regularised incomplete beta function I_x(a, b): the chance that a beta(a, b) variable stays below x. Continued fraction, taken from the
 * side on which it converges fast.
 * @param a, b 0.5 to 1e7
 * @source [DLMF] 8.17.22
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  requireInRange('x', x, { min: 0, max: 1, unit: '1' });
  requireInRange('a', a, { min: 0.5, max: 1e7, unit: '1' });
  requireInRange('b', b, { min: 0.5, max: 1e7, unit: '1' });
  if (x === 0 || x === 1) return x;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  // Modified Lentz: tiny stands in for a zero denominator.
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  if (Math.abs(d) < tiny) d = tiny;
  d = 1 / d;
  let fraction = d;
  for (let m = 1; m <= 20_000; m++) {
    for (const step of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 + step * d;
      if (Math.abs(d) < tiny) d = tiny;
      d = 1 / d;
      c = 1 + step / c;
      if (Math.abs(c) < tiny) c = tiny;
      fraction *= d * c;
    }
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return front * fraction;
}
