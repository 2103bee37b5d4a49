import type { Stretch } from '../read-proof-line.ts';
import type { OrderFact, View } from '../view.ts';

export interface Decided {
  readonly fact: OrderFact;
  readonly before: number;
  readonly after: number;
  /** Both may be without length: then the order is one of ties, and holds whether or not they are present. */
  readonly isBrief: boolean;
  /** Both intervals that the order variable names are present: otherwise it says nothing of times. */
  readonly isSpeaking: boolean;
  /** The variable could mean this pair or another one: it says something of times, which are the same, but not of ties. */
  readonly isAmbiguous: boolean;
}

/** What the order facts at hand say of pairs of `stretches`, a list that stays as it is, given which pairs are kept apart. */
export function decidedPairs(
  view: View,
  stretches: readonly Stretch[],
  areApart: (i: number, j: number) => boolean,
): Decided[] {
  const known = view.reading.stretches;
  return view.orders.flatMap((fact) => {
    const firsts = known.matching(stretches, fact.first);
    const seconds = known.matching(stretches, fact.second);
    const pairs = firsts.flatMap((i) => seconds.filter((j) => i !== j && areApart(i, j)).map((j) => [i, j] as const));
    const meant = fact.pair === null ? pairs : pairs.filter(([i, j]) => i === fact.pair?.[0] && j === fact.pair[1]);
    const isSpeaking = view.isPresent(fact.first.to.interval) && view.isPresent(fact.second.to.interval);
    return meant.map(([i, j]) => {
      const isBrief = known.mayBeEmpty(stretches[i] as Stretch) && known.mayBeEmpty(stretches[j] as Stretch);
      // A variable that other constraints use as well knows nothing of the ties of this one.
      const isAmbiguous = isBrief && (meant.length > 1 || !fact.isOwn);
      const [before, after] = fact.isBefore ? [i, j] : [j, i];
      return { fact, before, after, isBrief, isSpeaking, isAmbiguous };
    });
  });
}

/** Whether what the order variables say of stretches that are kept apart goes against the bounds. */
export function brokenOrder(
  view: View,
  stretches: readonly Stretch[],
  areApart: (i: number, j: number) => boolean,
): boolean {
  return decidedPairs(view, stretches, areApart).some(({ isSpeaking, before, after }) => {
    if (!isSpeaking) return false;
    return view.finish(stretches[before] as Stretch).min > view.begin(stretches[after] as Stretch).max;
  });
}
