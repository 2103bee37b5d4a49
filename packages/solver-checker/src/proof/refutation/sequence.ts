import { FORBIDDEN, type Sequence, type SequenceMember } from '@handrail/solver/model/model';
import type { Stretch } from '../read-proof-line.ts';
import type { Times, View } from '../view.ts';
import { exceedsIn, proposedStretch } from './energy.ts';
import type { Lane } from './lane.ts';
import { cannotBeDone } from './one-machine.ts';
import { closeTransitively, decidedPairs } from './orders.ts';
import { breaksTotal } from './sequence-total.ts';

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
    direct: (i, j) => directGap(constraint, i, j),
  };
  if (isNamedTwice(lane) || isTooMuchIn(proposedStretch(view.label), lane)) return true;
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
  return breaksGap(constraint, lane, view) || breaksTotal(constraint, view, lane) || isOverfull(lane);
}

/** One member at a time: those present cannot keep enough out of the stretch. */
function isTooMuchIn(stretch: readonly [number, number] | null, { members, isPresent, times }: Lane): boolean {
  if (stretch === null) return false;
  const loads = members.flatMap(({ interval }, i) => {
    const isFirst = members.findIndex((other) => other.interval === interval) === i;
    return isPresent[i] && isFirst ? [{ demand: 1, times: times[i] as Times }] : [];
  });
  return exceedsIn(loads, 1, ...stretch);
}

function directGap({ members, types, transitions }: Sequence, i: number, j: number): number {
  const [a, b] = [members[i] as SequenceMember, members[j] as SequenceMember];
  return Math.min(FORBIDDEN, transitions[a.endType * types + b.startType] as number);
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
function breaksGap(constraint: Sequence, lane: Lane, view: View): boolean {
  const { members, isPresent, isNamed, times, before } = lane;
  const n = members.length;
  const room = (i: number, j: number) => (times[j] as Times).start.max - (times[i] as Times).end.min;
  // Between the least gap of all ways and the direct way nothing is left to look for; only in between is the way searched.
  const least = leastGapsOf(constraint, view);
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
export function leastGapsOf(constraint: Sequence, view: View): readonly number[] {
  const known = leastGaps.get(constraint);
  if (known !== undefined) return known;
  const { members } = constraint;
  const n = members.length;
  const shortest = members.map(({ interval }) => view.reading.shortest(interval));
  const direct = (i: number, j: number) => directGap(constraint, i, j);
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
