import type { Sequence, SequenceMember } from '@handrail/solver/model/model';
import type { Times, View } from '../view.ts';
import { exceedsIn, proposedStretch } from './energy.ts';
import type { Lane } from './lane.ts';
import { cannotBeDone } from './one-machine.ts';
import { type Decided, decidedPairs } from './orders.ts';
import { Relation } from './relation.ts';
import { type SequenceTables, tablesOf } from './sequence-tables.ts';
import { breaksTotal } from './sequence-total.ts';

export function refutesSequence(constraint: Sequence, view: View): boolean {
  const { members } = constraint;
  const tables = tablesOf(constraint, view.reading);
  const decided = decidedPairs(view, view.reading.stretches.ofMembers(constraint), () => true);
  // Most inferences are of one order and two times: seen without a look at the rest.
  if (decided.some((pair) => isPlainlyBroken(pair, constraint, tables, view))) return true;
  const lane: Lane = {
    members,
    ...tables,
    isPresent: members.map(({ interval }) => view.isPresent(interval)),
    isAbsent: members.map(({ interval }) => view.isAbsent(interval)),
    times: members.map(({ interval }) => view.times(interval)),
    before: new Relation(members.length),
    ifPresent: new Relation(members.length),
    isNamed: members.map(({ interval }) => view.isNamed(interval)),
  };
  if (isNamedTwice(lane) || isTooMuchIn(proposedStretch(view.label), lane)) return true;
  const brief = new Relation(members.length);
  for (const { before, after, isBrief, isSpeaking, isAmbiguous } of decided) {
    lane.isNamed[before] = true;
    lane.isNamed[after] = true;
    if (isAmbiguous) continue;
    lane.ifPresent.add(before, after);
    if (isBrief) brief.add(before, after);
    if (isSpeaking && lane.isPresent[before] && lane.isPresent[after]) lane.before.add(before, after);
  }
  if (brief.close()) return true;
  placeFirstAndLast(constraint, lane);
  if (orderByTimes(lane)) return true;
  if (lane.before.close()) return true;
  lane.ifPresent.addAll(lane.before);
  return breaksGap(lane) || breaksTotal(constraint, view, lane) || isOverfull(lane);
}

/** Two members that are in this order for certain are too close for any way between them. */
function isPlainlyBroken(
  { before, after, isSpeaking, isAmbiguous }: Decided,
  { members }: Sequence,
  { least }: SequenceTables,
  view: View,
): boolean {
  if (!isSpeaking || isAmbiguous) return false;
  const { interval: a } = members[before] as SequenceMember;
  const { interval: b } = members[after] as SequenceMember;
  if (a === b || !view.isPresent(a) || !view.isPresent(b)) return false;
  return view.times(b).start.max - view.times(a).end.min < (least[before * members.length + after] as number);
}

/** One member at a time: those present cannot keep enough out of the stretch. */
function isTooMuchIn(stretch: readonly [number, number] | null, { isFirstNaming, isPresent, times }: Lane): boolean {
  if (stretch === null) return false;
  const loads = isFirstNaming.flatMap((isFirst, i) =>
    isPresent[i] && isFirst ? [{ demand: 1, times: times[i] as Times }] : [],
  );
  return exceedsIn(loads, 1, ...stretch);
}

/** A member that stands there twice would come after itself, so that it cannot be present with a length. */
function isNamedTwice({ isFirstNaming, isPresent, times }: Lane): boolean {
  return isFirstNaming.some(
    (isFirst, i) => !isFirst && isPresent[i] === true && (times[i] as Times).end.min > (times[i] as Times).start.max,
  );
}

function placeFirstAndLast({ first, last }: Sequence, { members, isPresent, before }: Lane): void {
  members.forEach(({ interval }, i) => {
    if (!isPresent[i] || (interval !== first && interval !== last)) return;
    members.forEach((_, j) => {
      if (i === j || !isPresent[j]) return;
      if (interval === first) before.add(i, j);
      if (interval === last) before.add(j, i);
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
      if (!forth) before.add(j, i);
      if (!back) before.add(i, j);
    }
  }
  return false;
}

/** Two members in their order are too close, or in neither order far enough apart, for any way between them. */
function breaksGap(lane: Lane): boolean {
  const { members, isPresent, isNamed, times, before, direct, least } = lane;
  const n = members.length;
  const room = (i: number, j: number) => (times[j] as Times).start.max - (times[i] as Times).end.min;
  // Between the least gap of all ways and the direct way nothing is left to look for; only in between is the way searched.
  const isTooClose = (i: number, j: number) => {
    const space = room(i, j);
    if (space < (least[i * n + j] as number)) return true;
    return space < (direct[i * n + j] as number) && !hasWayWithin(space, lane, i, j);
  };
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (!isPresent[i] || !isPresent[j] || !(isNamed[i] || isNamed[j])) continue;
      if (members[i]?.interval === members[j]?.interval) continue;
      const [forth, back] = [before.has(i, j), before.has(j, i)];
      if (forth ? isTooClose(i, j) : back ? isTooClose(j, i) : isTooClose(i, j) && isTooClose(j, i)) return true;
    }
  }
  return false;
}

/** The members that something is said about cannot all be done one after the other, even if no time passes between them. */
function isOverfull({ isFirstNaming, isPresent, isNamed, times, before }: Lane): boolean {
  const involved = isFirstNaming.flatMap((isFirst, i) => (isPresent[i] && isNamed[i] && isFirst ? [i] : []));
  if (involved.length < 3) return false;
  const pieces = involved.map((i) => {
    const { start, end, duration } = times[i] as Times;
    return { release: start.min, deadline: end.max, length: duration.min };
  });
  return cannotBeDone(pieces, (x, y) => before.has(involved[x] as number, involved[y] as number));
}

/**
 * Whether some way from the end of i to the start of j, through members that may still come between, takes no more than `space`.
 * Members that the least gaps say are too far off either end are passed over.
 */
function hasWayWithin(
  space: number,
  { members, isAbsent, ifPresent, shortest, direct, least }: Lane,
  i: number,
  j: number,
): boolean {
  const n = members.length;
  const between: number[] = [];
  for (let k = 0; k < n; k++) {
    if (k === i || k === j || isAbsent[k] || ifPresent.has(k, i) || ifPresent.has(j, k)) continue;
    const around = (least[i * n + k] as number) + (shortest[k] as number) + (least[k * n + j] as number);
    if (around <= space) between.push(k);
  }
  // Dijkstra's algorithm; `reach` is when such a member can start.
  const reach = between.map((k) => direct[i * n + k] as number);
  while (between.length > 0) {
    let nearest = 0;
    for (let x = 1; x < between.length; x++) if ((reach[x] as number) < (reach[nearest] as number)) nearest = x;
    const k = between[nearest] as number;
    const leaves = (reach[nearest] as number) + (shortest[k] as number);
    if (leaves > space) return false;
    if (leaves + (direct[k * n + j] as number) <= space) return true;
    between.splice(nearest, 1);
    reach.splice(nearest, 1);
    between.forEach((to, x) => {
      reach[x] = Math.min(reach[x] as number, leaves + (direct[k * n + to] as number));
    });
  }
  return false;
}
