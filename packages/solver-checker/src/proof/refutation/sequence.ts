import { FORBIDDEN, type Sequence, type SequenceMember } from '@handrail/solver/model/model';
import type { Stretch } from '../read-proof-line.ts';
import type { Times, View } from '../view.ts';
import { cannotBeDone } from './one-machine.ts';
import { closeTransitively, decidedPairs } from './orders.ts';

/** What is known of the members of a sequence within the bounds, all tables member × member. */
interface Lane {
  readonly members: readonly SequenceMember[];
  readonly isPresent: readonly boolean[];
  readonly isAbsent: readonly boolean[];
  readonly times: readonly Times[];
  readonly shortest: readonly number[];
  /** Known order of two present members, and what follows from it. */
  readonly before: boolean[][];
  /** Order that two members have if both are present. */
  readonly ifPresent: boolean[][];
  readonly direct: (i: number, j: number) => number;
  /** Members that something is said about: of the others only the model's bounds are known. */
  readonly isNamed: boolean[];
}

export function refutesSequence(constraint: Sequence, view: View): boolean {
  const { members } = constraint;
  const stretches: Stretch[] = members.map(({ interval }) => ({
    from: [{ interval, of: 'start', offset: 0 }],
    to: { interval, of: 'end', offset: 0 },
  }));
  const lane: Lane = {
    members,
    isPresent: members.map(({ interval }) => view.isPresent(interval)),
    isAbsent: members.map(({ interval }) => view.isAbsent(interval)),
    times: members.map(({ interval }) => view.times(interval)),
    shortest: members.map(({ interval }) => view.reading.shortest(interval)),
    before: members.map(() => members.map(() => false)),
    ifPresent: members.map(() => members.map(() => false)),
    isNamed: members.map(({ interval }) => view.isNamed(interval)),
    direct: (i, j) => {
      const [a, b] = [members[i] as SequenceMember, members[j] as SequenceMember];
      return Math.min(FORBIDDEN, constraint.transitions[a.endType * constraint.types + b.startType] as number);
    },
  };
  if (isNamedTwice(lane)) return true;
  const brief = members.map(() => members.map(() => false));
  for (const { before, after, isBrief, isSpeaking, isAmbiguous } of decidedPairs(view, stretches, () => true)) {
    lane.isNamed[before] = true;
    lane.isNamed[after] = true;
    if (isAmbiguous) continue;
    (lane.ifPresent[before] as boolean[])[after] = true;
    if (isBrief) (brief[before] as boolean[])[after] = true;
    if (isSpeaking && lane.isPresent[before] && lane.isPresent[after]) (lane.before[before] as boolean[])[after] = true;
  }
  if (closeTransitively(brief)) return true;
  placeFirstAndLast(constraint, lane);
  if (orderByTimes(lane)) return true;
  if (closeTransitively(lane.before)) return true;
  lane.before.forEach((row, i) => row.forEach((is, j) => is && ((lane.ifPresent[i] as boolean[])[j] = true)));
  return breaksGap(constraint, lane) || breaksTotal(constraint, view, lane) || isOverfull(lane);
}

/** A member that stands there twice would come after itself, so that it cannot be present with a length. */
function isNamedTwice({ members, isPresent, times }: Lane): boolean {
  return members.some(({ interval }, i) => {
    const again = members.findIndex((other) => other.interval === interval) !== i;
    return again && isPresent[i] === true && (times[i] as Times).end.min > (times[i] as Times).start.max;
  });
}

function placeFirstAndLast({ first, last }: Sequence, { members, isPresent, before }: Lane): void {
  members.forEach(({ interval }, i) => {
    if (!isPresent[i] || (interval !== first && interval !== last)) return;
    members.forEach((_, j) => {
      if (i === j || !isPresent[j]) return;
      if (interval === first) (before[i] as boolean[])[j] = true;
      if (interval === last) (before[j] as boolean[])[i] = true;
    });
  });
}

/** Where one order of two present members does not fit their times, the other one holds. True: neither fits. */
function orderByTimes(lane: Lane): boolean {
  const { members, isPresent, times, before } = lane;
  const canPrecede = (i: number, j: number) => (times[i] as Times).end.min <= (times[j] as Times).start.max;
  for (let i = 0; i < members.length; i++) {
    for (let j = i + 1; j < members.length; j++) {
      if (!isPresent[i] || !isPresent[j] || members[i]?.interval === members[j]?.interval) continue;
      const [forth, back] = [canPrecede(i, j), canPrecede(j, i)];
      if (!forth && !back) return true;
      if (!forth) (before[j] as boolean[])[i] = true;
      if (!back) (before[i] as boolean[])[j] = true;
    }
  }
  return false;
}

/** Two members in their order are too close, or in neither order far enough apart, for any way between them. */
function breaksGap(constraint: Sequence, lane: Lane): boolean {
  const { members, isPresent, isNamed, times, before } = lane;
  const n = members.length;
  const room = (i: number, j: number) => (times[j] as Times).start.max - (times[i] as Times).end.min;
  // Between the least gap of all ways and the direct way nothing is left to look for; only in between is the way searched.
  const least = leastGapsOfAll(constraint, lane);
  const isTooClose = (i: number, j: number) => {
    const space = room(i, j);
    if (space < (least[i * n + j] as number)) return true;
    return space < lane.direct(i, j) && space < leastGap(lane, i, j);
  };
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (!isPresent[i] || !isPresent[j] || !(isNamed[i] || isNamed[j])) continue;
      if (members[i]?.interval === members[j]?.interval) continue;
      const [forth, back] = [before[i]?.[j] === true, before[j]?.[i] === true];
      if (forth ? isTooClose(i, j) : back ? isTooClose(j, i) : isTooClose(i, j) && isTooClose(j, i)) return true;
    }
  }
  return false;
}

/** By sequence constraint; worked out once, since neither steps nor least durations change. */
const leastGaps = new WeakMap<Sequence, readonly number[]>();

/** Least gap with every member free to come between, row-major: never more than `leastGap` in any state. */
function leastGapsOfAll(constraint: Sequence, { members, shortest, direct }: Lane): readonly number[] {
  const known = leastGaps.get(constraint);
  if (known !== undefined) return known;
  const n = members.length;
  const gaps = Array.from({ length: n * n }, (_, at) => direct(Math.floor(at / n), at % n));
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const leaves = (gaps[i * n + k] as number) + (shortest[k] as number);
      for (let j = 0; j < n; j++) {
        if (j === k || j === i) continue;
        gaps[i * n + j] = Math.min(FORBIDDEN, gaps[i * n + j] as number, leaves + (gaps[k * n + j] as number));
      }
    }
  }
  leastGaps.set(constraint, gaps);
  return gaps;
}

/** The members that something is said about cannot all be done one after the other, even if no time passes between them. */
function isOverfull({ members, isPresent, isNamed, times, before }: Lane): boolean {
  const involved = members.flatMap(({ interval }, i) =>
    isPresent[i] && isNamed[i] && members.findIndex((other) => other.interval === interval) === i ? [i] : [],
  );
  if (involved.length < 3) return false;
  const pieces = involved.map((i) => {
    const { start, end, duration } = times[i] as Times;
    return { release: start.min, deadline: end.max, length: duration.min };
  });
  const order = involved.map((i) => involved.map((j) => before[i]?.[j] === true));
  return cannotBeDone(pieces, order);
}

/** Least time from the end of i to the start of j, through members that may still come between; FORBIDDEN if there is none. */
function leastGap({ members, isAbsent, ifPresent, shortest, direct }: Lane, i: number, j: number): number {
  const n = members.length;
  const reach = members.map((_, k) => (k === i ? 0 : FORBIDDEN));
  const isDone = members.map(
    (_, k) => k !== i && k !== j && (isAbsent[k] === true || ifPresent[k]?.[i] === true || ifPresent[j]?.[k] === true),
  );
  for (;;) {
    let nearest = -1;
    for (let k = 0; k < n; k++) {
      if (
        !isDone[k] &&
        (reach[k] as number) < FORBIDDEN &&
        (nearest < 0 || (reach[k] as number) < (reach[nearest] as number))
      )
        nearest = k;
    }
    if (nearest < 0 || nearest === j) return reach[j] as number;
    isDone[nearest] = true;
    const leaves = (reach[nearest] as number) + (nearest === i ? 0 : (shortest[nearest] as number));
    for (let k = 0; k < n; k++) {
      const step = direct(nearest, k);
      if (!isDone[k] && k !== nearest && step < FORBIDDEN) reach[k] = Math.min(reach[k] as number, leaves + step);
    }
  }
}

/** The total of the transitions is said to be less than it can be, or more than it is; or the lane has no room for it. */
function breaksTotal(constraint: Sequence, view: View, lane: Lane): boolean {
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
  if (ifPresent[j]?.[i]) return true;
  return members.some((_, k) => k !== i && k !== j && isPresent[k] && ifPresent[i]?.[k] && ifPresent[k]?.[j]);
}

/** Every present member but the first is entered by the cheapest step that is still open; and, backwards, left by one. */
function leastTotal(constraint: Sequence, lane: Lane, forwards: boolean): number {
  const { members, isPresent, isAbsent, direct } = lane;
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
      if (direct(a, b) < cheapest && !isStepOut(lane, a, b)) cheapest = direct(a, b);
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
  const { members, isPresent, direct } = lane;
  const once = members.flatMap(({ interval }, i) =>
    members.findIndex((other) => other.interval === interval) === i ? [i] : [],
  );
  if (scale < 1 || multipliers.length !== once.length) return 0;
  const n = once.length;
  const step = once.map((i) => once.map((j) => (i === j ? 0 : direct(i, j))));
  for (let k = 0; k < n; k++) {
    for (const row of step)
      for (let j = 0; j < n; j++) row[j] = Math.min(row[j] as number, (row[k] as number) + (step[k]?.[j] as number));
  }
  const present = once.flatMap((i, x) => (isPresent[i] ? [x] : []));
  const cost = (x: number, y: number) => {
    const ways = [[x, y] as const, [y, x] as const].filter(
      ([a, b]) => !isStepOut(lane, once[a] as number, once[b] as number),
    );
    const least = Math.min(FORBIDDEN, ...ways.map(([a, b]) => step[a]?.[b] as number));
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
  const rank = (i: number) => present.filter((j) => before[j]?.[i]).length;
  const order = present.toSorted((i, j) => rank(i) - rank(j));
  let total = 0;
  for (let k = 1; k < order.length; k++) {
    const [a, b] = [order[k - 1] as number, order[k] as number];
    if (!before[a]?.[b]) return null;
    total = Math.min(FORBIDDEN, total + direct(a, b));
  }
  return total;
}
