import { FORBIDDEN, type Sequence } from '@handrail/solver/model/model';
import type { Times, View } from '../view.ts';
import type { Lane } from './lane.ts';

/** The total of the transitions is said to be less than it can be, or more than it is; or the lane has no room for it. */
export function breaksTotal(constraint: Sequence, view: View, lane: Lane): boolean {
  const named = constraint.transitionTotal === null ? [] : [view.variable(constraint.transitionTotal)];
  const totals = [...named, ...view.totals.map((id) => ({ min: view.bounds.min(id), max: view.bounds.max(id) }))];
  const least = Math.max(0, leastTotal(constraint, lane, true), leastTotal(constraint, lane, false));
  if (totals.some(({ max }) => max < least)) return true;
  const exact = exactTotal(lane);
  if (exact !== null && totals.some(({ min, max }) => exact < min || exact > max)) return true;
  const first = lane.members.findIndex(({ interval }, i) => interval === constraint.first && lane.isPresent[i]);
  const last = lane.members.findIndex(({ interval }, i) => interval === constraint.last && lane.isPresent[i]);
  if (first < 0 || last < 0 || first === last) return false;
  const byTree = leastByTree(lane, first, last, view.label);
  if (totals.some(({ max }) => max < byTree)) return true;
  let needed = Math.max(least, ...totals.map(({ min }) => min));
  lane.members.forEach((_, i) => {
    if (i !== first && i !== last && lane.isPresent[i]) needed += (lane.times[i] as Times).duration.min;
  });
  return (lane.times[first] as Times).end.min + needed > (lane.times[last] as Times).start.max;
}

/** Whether i cannot come directly before j among the present members: it is after it, or one of them lies between. */
function isStepOut({ members, isPresent, ifPresent }: Lane, i: number, j: number): boolean {
  if (ifPresent.has(j, i)) return true;
  return members.some((_, k) => k !== i && k !== j && isPresent[k] && ifPresent.has(i, k) && ifPresent.has(k, j));
}

/** Every present member but the first is entered by the cheapest step that is still open; and, backwards, left by one. */
function leastTotal(constraint: Sequence, lane: Lane, forwards: boolean): number {
  const { members, isPresent, isAbsent, direct } = lane;
  const n = members.length;
  const end = forwards ? constraint.first : constraint.last;
  let sum = 0;
  let greatest = 0;
  let hasEnd = false;
  members.forEach(({ interval }, j) => {
    if (!isPresent[j]) return;
    if (interval === end) {
      hasEnd = true;
      return;
    }
    let cheapest = FORBIDDEN;
    members.forEach((_, i) => {
      if (i === j || isAbsent[i]) return;
      const [a, b] = forwards ? [i, j] : [j, i];
      const step = direct[a * n + b] as number;
      if (step < cheapest && !isStepOut(lane, a, b)) cheapest = step;
    });
    if (cheapest >= FORBIDDEN) return;
    sum += cheapest;
    greatest = Math.max(greatest, cheapest);
  });
  return hasEnd ? sum : sum - greatest;
}

/**
 * Least total by a spanning tree, with multipliers that the proof's label proposes: a way through all present members from the
 * first to the last is a tree, in which all but these two have two steps. Any multipliers give a bound; good ones a better one.
 */
function leastByTree(lane: Lane, first: number, last: number, label: string): number {
  const [head, ...numbers] = label.split('/');
  if (head !== 'route' || numbers.length < 2 || !numbers.every((number) => /^-?\d+$/.test(number))) return 0;
  const [scale = 0, ...multipliers] = numbers.map(Number);
  const { members, isPresent, isFirstNaming, leastSteps } = lane;
  const once = isFirstNaming.flatMap((isFirst, i) => (isFirst ? [i] : []));
  if (scale < 1 || multipliers.length !== once.length) return 0;
  const present = once.flatMap((i, x) => (isPresent[i] ? [x] : []));
  const cost = (x: number, y: number) => {
    const [i, j] = [once[x] as number, once[y] as number];
    const forth = isStepOut(lane, i, j) ? FORBIDDEN : (leastSteps[i * members.length + j] as number);
    const back = isStepOut(lane, j, i) ? FORBIDDEN : (leastSteps[j * members.length + i] as number);
    const least = Math.min(forth, back);
    return least >= FORBIDDEN
      ? Number.POSITIVE_INFINITY
      : scale * least + (multipliers[x] as number) + (multipliers[y] as number);
  };
  // Prim's algorithm from the first member.
  const reach = new Map(present.map((x) => [x, once[x] === first ? 0 : Number.POSITIVE_INFINITY]));
  let tree = 0;
  while (reach.size > 0) {
    const [nearest, distance] = [...reach].reduce((a, b) => (b[1] < a[1] ? b : a));
    if (distance === Number.POSITIVE_INFINITY) return FORBIDDEN;
    tree += distance;
    reach.delete(nearest);
    for (const [x, old] of reach) reach.set(x, Math.min(old, cost(nearest, x)));
  }
  for (const x of present) {
    const isEnd = once[x] === first || once[x] === last;
    tree -= (isEnd ? 1 : 2) * (multipliers[x] as number);
  }
  return Math.ceil(tree / scale);
}

/** The total, when it is known of all members whether and in which order they come; FORBIDDEN when that order is not allowed. */
function exactTotal({ members, isPresent, isAbsent, before, direct }: Lane): number | null {
  if (members.some((_, i) => !isPresent[i] && !isAbsent[i])) return null;
  const present = members.flatMap((_, i) => (isPresent[i] ? [i] : []));
  const rank = (i: number) => present.filter((j) => before.has(j, i)).length;
  const order = present.toSorted((i, j) => rank(i) - rank(j));
  let total = 0;
  for (let k = 1; k < order.length; k++) {
    const [a, b] = [order[k - 1] as number, order[k] as number];
    if (!before.has(a, b)) return null;
    total = Math.min(FORBIDDEN, total + (direct[a * members.length + b] as number));
  }
  return total;
}
