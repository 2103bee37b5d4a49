import type { Interval, Intervals } from './window-set.ts';

export interface Search {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  /** Between samples. Two crossings closer than this are still found where the function has one smooth extremum between them. */
  readonly stepMs: number;
  readonly toleranceMs: number;
}

/**
 * Where a continuous function of time is positive. Sampled, each change of sign narrowed to the tolerance, and every
 * extremum that points at zero without reaching it followed to its tip, so that a grazing pass is not stepped over.
 */
export function windowsWherePositive(f: (utcMs: number) => number, search: Search): Intervals {
  const { startUtcMs, endUtcMs, toleranceMs } = search;
  const steps = Math.max(2, Math.ceil((endUtcMs - startUtcMs) / search.stepMs));
  const timeOf = (k: number): number => startUtcMs + ((endUtcMs - startUtcMs) * k) / steps;
  const crossings: number[] = [];
  /** Enters the two crossings round an extremum that lies between two samples of one sign, if it reaches past zero. */
  const follow = (t0: number, f0: number, t1: number, f1: number): void => {
    const tip = extremum(f, t0, t1, f0 > 0, toleranceMs);
    if (tip.value > 0 === f0 > 0) return;
    crossings.push(crossing(f, t0, f0, tip.utcMs, tip.value, toleranceMs));
    crossings.push(crossing(f, tip.utcMs, tip.value, t1, f1, toleranceMs));
  };
  /** The first and the last step have a neighbour on one side only; there the slopes at both ends tell of an extremum between. */
  const followAtEdge = (t0: number, f0: number, t1: number, f1: number): void => {
    const aside = (t1 - t0) / 64;
    if (f0 > 0 !== f1 > 0) return;
    const sign = f0 > 0 ? 1 : -1;
    if (sign * f(t0 + aside) < sign * f0 && sign * f(t1 - aside) < sign * f1) follow(t0, f0, t1, f1);
  };
  let ta = startUtcMs;
  let fa = f(ta);
  const startsInside = fa > 0;
  let tb = timeOf(1);
  let fb = f(tb);
  if (fa > 0 !== fb > 0) crossings.push(crossing(f, ta, fa, tb, fb, toleranceMs));
  if (Math.abs(fa) <= Math.abs(fb)) followAtEdge(ta, fa, tb, fb);
  for (let k = 2; k <= steps; k++) {
    const tc = timeOf(k);
    const fc = f(tc);
    const side = fb > 0;
    const nearest = Math.abs(fb) < Math.abs(fa) && Math.abs(fb) <= Math.abs(fc);
    if (fa > 0 === side && fc > 0 === side && nearest) follow(ta, fa, tc, fc);
    if (side !== fc > 0) crossings.push(crossing(f, tb, fb, tc, fc, toleranceMs));
    if (k === steps && Math.abs(fc) < Math.abs(fb)) followAtEdge(tb, fb, tc, fc);
    [ta, fa, tb, fb] = [tb, fb, tc, fc];
  }
  return fromCrossings(startsInside, crossings, startUtcMs, endUtcMs);
}

/** Pairs up the instants at which a condition changes. */
export function fromCrossings(
  startsInside: boolean,
  crossings: readonly number[],
  startUtcMs: number,
  endUtcMs: number,
): Intervals {
  const windows: Interval[] = [];
  let open = startsInside ? startUtcMs : null;
  for (const t of crossings) {
    if (open === null) open = t;
    else {
      if (t > open) windows.push([open, t]);
      open = null;
    }
  }
  if (open !== null && open < endUtcMs) windows.push([open, endUtcMs]);
  return windows;
}

/**
 * A root between two instants of opposite sign. The straight line between the ends lands beside the root, nearly always
 * within the tolerance, so each guess is followed by one a tolerance further on: when the sign has changed, that is it.
 * A line that keeps missing (a function with a corner) is given up for halving.
 */
function crossing(
  f: (t: number) => number,
  t0: number,
  f0: number,
  t1: number,
  f1: number,
  toleranceMs: number,
): number {
  const sameAsStart = (value: number): boolean => value > 0 === f0 > 0;
  const ends = { a: t0, fa: f0, b: t1, fb: f1 };
  const narrow = (t: number, value: number): void => {
    if (sameAsStart(value)) [ends.a, ends.fa] = [t, value];
    else [ends.b, ends.fb] = [t, value];
  };
  for (let turn = 0; turn < 60 && ends.b - ends.a > toleranceMs; turn++) {
    const { a, fa, b, fb } = ends;
    const straight = a - (fa * (b - a)) / (fb - fa);
    const t = turn < 5 && straight > a && straight < b ? straight : (a + b) / 2;
    const value = f(t);
    narrow(t, value);
    if (ends.b - ends.a <= toleranceMs) break;
    const over = sameAsStart(value) ? Math.min(b, t + toleranceMs) : Math.max(a, t - toleranceMs);
    narrow(over, f(over));
  }
  return (ends.a + ends.b) / 2;
}

/** Golden-section search for the sample nearest to zero (least where positive, greatest where negative); ends early on a change of sign. */
function extremum(
  f: (t: number) => number,
  a: number,
  c: number,
  positive: boolean,
  toleranceMs: number,
): { utcMs: number; value: number } {
  const g = positive ? f : (t: number): number => -f(t);
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [a, c];
  let p = high - ratio * (high - low);
  let q = low + ratio * (high - low);
  let [gp, gq] = [g(p), g(q)];
  for (let turn = 0; turn < 60 && high - low > toleranceMs && gp > 0 && gq > 0; turn++) {
    if (gp < gq) {
      [high, q, gq] = [q, p, gp];
      p = high - ratio * (high - low);
      gp = g(p);
    } else {
      [low, p, gp] = [p, q, gq];
      q = low + ratio * (high - low);
      gq = g(q);
    }
  }
  return gp < gq ? { utcMs: p, value: positive ? gp : -gp } : { utcMs: q, value: positive ? gq : -gq };
}
