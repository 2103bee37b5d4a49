import type { State } from '@handrail/solver/model/model';
import type { Stretch } from '../read-proof-line.ts';
import type { View } from '../view.ts';
import { decidedPairs } from './orders.ts';
import { Relation } from './relation.ts';

export interface Hold extends Stretch {
  readonly owner: number;
  readonly isWriter: boolean;
}

/** By state constraint: they never change. */
const holdsKnown = new WeakMap<State, readonly Hold[]>();

/** The holds of a state: its writers, then its needs, each of which begins with the first write of its own interval at the latest. */
export function holdsOf(constraint: State): readonly Hold[] {
  const known = holdsKnown.get(constraint);
  if (known !== undefined) return known;
  const writers: Hold[] = constraint.writers.map(({ from, to }) => ({
    from: [from],
    to,
    owner: from.interval,
    isWriter: true,
  }));
  const needs: Hold[] = constraint.needs.map((need) => {
    const own = constraint.writers.filter(({ from }) => from.interval === need.from.interval).map(({ from }) => from);
    return { from: [need.from, ...own], to: need.to, owner: need.from.interval, isWriter: false };
  });
  const holds = [...writers, ...needs];
  holdsKnown.set(constraint, holds);
  return holds;
}

/** Whether the constraint keeps two of its holds apart. */
export function areApartInState(holds: readonly Hold[], i: number, j: number): boolean {
  return areApart(holds[i] as Hold, holds[j] as Hold);
}

function areApart(a: Hold, b: Hold): boolean {
  return (a.isWriter && b.isWriter) || ((a.isWriter || b.isWriter) && a.owner !== b.owner);
}

/** Pairs of holds that order variables of ties could mean, for those that could mean several. */
export function meaningsOfTies(constraint: State, view: View): Map<number, [number, number][]> {
  const holds = holdsOf(constraint);
  const meanings = new Map<number, [number, number][]>();
  for (const { fact, before, after, isAmbiguous } of decidedPairs(view, holds, (i, j) =>
    areApartInState(holds, i, j),
  )) {
    if (!isAmbiguous || !fact.isOwn) continue;
    const pairs = meanings.get(fact.variable) ?? [];
    pairs.push(fact.isBefore ? [before, after] : [after, before]);
    meanings.set(fact.variable, pairs);
  }
  return meanings;
}

export function refutesState(constraint: State, view: View): boolean {
  const holds = holdsOf(constraint);
  const isPresent = holds.map((hold) => [...hold.from, hold.to].every(({ interval }) => view.isPresent(interval)));
  const isAbsent = holds.map((hold) => [...hold.from, hold.to].some(({ interval }) => view.isAbsent(interval)));
  if (holds.some((hold, i) => isPresent[i] && runsBackwards(hold, view))) return true;

  const begins = holds.map((hold) => view.begin(hold));
  const finishes = holds.map((hold) => view.finish(hold));
  const canPrecede = (i: number, j: number) => (finishes[i]?.min as number) <= (begins[j]?.max as number);
  const before = new Relation(holds.length);
  const brief = new Relation(holds.length);
  const decided = decidedPairs(view, holds, (i, j) => areApartInState(holds, i, j));
  for (const { before: i, after: j, isBrief, isSpeaking, isAmbiguous } of decided) {
    if (isSpeaking && isPresent[i] && isPresent[j] && !canPrecede(i, j)) return true;
    if (isAmbiguous) continue;
    // The order of stretches that may both be without length is one order, whoever is present.
    if (isBrief) brief.add(i, j);
    if (isSpeaking && isPresent[i] && isPresent[j]) before.add(i, j);
  }
  if (brief.close()) return true;
  for (const { need, writer, serves } of view.supports) {
    if (serves && writer >= 0) before.add(writer, constraint.writers.length + need);
  }
  for (let i = 0; i < holds.length; i++) {
    for (let j = 0; j < holds.length; j++) {
      if (i === j || !isPresent[i] || !isPresent[j] || !areApart(holds[i] as Hold, holds[j] as Hold)) continue;
      if (!canPrecede(i, j)) {
        if (!canPrecede(j, i)) return true;
        before.add(j, i);
      }
    }
  }
  if (before.close()) return true;
  if (holds.some((_, i) => holds.some((__, j) => before.has(i, j) && !canPrecede(i, j)))) return true;
  return constraint.needs.some((need, n) =>
    isUnserved(constraint, view, need.allowed, n, { holds, isPresent, isAbsent, before }),
  );
}

interface Knowledge {
  readonly holds: readonly Hold[];
  readonly isPresent: readonly boolean[];
  readonly isAbsent: readonly boolean[];
  readonly before: Relation;
}

/** No writer, nor the initial value, can be what serves this need; or one that is said to serve it cannot. */
function isUnserved(
  constraint: State,
  view: View,
  allowed: readonly number[],
  n: number,
  { holds, isPresent, isAbsent, before }: Knowledge,
): boolean {
  const x = constraint.writers.length + n;
  const said = view.supports.filter(({ need }) => need === n);
  const serving = said.filter(({ serves }) => serves);
  const foreign = constraint.writers.flatMap((_, w) => (holds[w]?.owner === holds[x]?.owner ? [] : [w]));
  const threats = foreign.filter((w) => isPresent[w] && !allowed.includes(constraint.writers[w]?.value as number));
  const comesBefore = (i: number, j: number) => before.has(i, j);
  const isBlocked = (writer: number) => {
    if (said.some((fact) => fact.writer === writer && !fact.serves)) return true;
    if (writer < 0) return !allowed.includes(constraint.initial) || threats.some((t) => comesBefore(t, x));
    if (!allowed.includes(constraint.writers[writer]?.value as number)) return true;
    if (isAbsent[writer] || comesBefore(x, writer)) return true;
    return threats.some((t) => comesBefore(writer, t) && comesBefore(t, x));
  };
  if (serving.some(({ writer }) => isAbsent[x] || isBlocked(writer) || (writer >= 0 && !foreign.includes(writer))))
    return true;
  return isPresent[x] === true && [-1, ...foreign].every(isBlocked);
}

/** Its own first instant lies after its last one. */
function runsBackwards({ from: [from], to }: Stretch, view: View): boolean {
  return (
    from !== undefined &&
    (view.instant(from).min > view.instant(to).max || view.reading.stretches.leastLength(to, from) > 0)
  );
}
