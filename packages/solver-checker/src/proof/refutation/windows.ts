import type { Windows } from '@handrail/solver/model/model';
import type { Range, View } from '../view.ts';

export function refutesWindows(constraint: Windows, view: View): boolean {
  const { from, to, when, mode } = constraint;
  if (!view.allTrue(when) || !view.isPresent(from.interval) || !view.isPresent(to.interval)) return false;
  const begin = view.instant(from);
  const finish = view.instant(to);
  // The stretch runs forwards, and lasts at least as long as its interval's duration says.
  const length = from.interval === to.interval ? Math.max(0, leastLength(constraint, view)) : 0;
  if (begin.min + length > finish.max) return true;
  return mode === 'inside'
    ? !constraint.windows.some((window) => canLieIn(window, begin, finish, length))
    : !canAvoid(constraint, begin, finish);
}

function leastLength({ from, to }: Windows, view: View): number {
  const shift = to.offset - from.offset;
  const { duration } = view.times(from.interval);
  if (from.of === to.of) return shift;
  return from.of === 'start' ? shift + duration.min : shift - duration.max;
}

function canLieIn([a, b]: readonly [number, number], begin: Range, finish: Range, length: number): boolean {
  const earliest = Math.max(begin.min, a);
  const latest = Math.min(begin.max, b - 1, Math.min(finish.max, b) - length);
  return earliest <= latest && finish.min <= b;
}

/** Moves the earliest beginning past every window that it can be neither before nor inside of, until it fits or is too late. */
function canAvoid({ windows }: Windows, begin: Range, finish: Range): boolean {
  let earliest = begin.min;
  for (const [a, b] of windows) {
    if (a >= b) continue;
    const isPastBefore = earliest >= a || finish.min > a;
    if (isPastBefore && earliest < b) earliest = b;
  }
  if (earliest > begin.max) return false;
  // And the other way round: the latest end before every window that begins too late to be passed.
  let latest = finish.max;
  let last = begin.max;
  for (const [a, b] of windows.toReversed()) {
    if (a >= b || last >= b) continue;
    if (latest > a || last >= a) {
      if (last < b) {
        last = Math.min(last, a - 1);
        latest = Math.min(latest, a);
      }
    }
  }
  return last >= earliest && latest >= finish.min && latest >= earliest;
}
