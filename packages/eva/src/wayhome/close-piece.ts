/**
 * The quickest way to bring one piece into a state that may be left: a shortest path over the values of all its aspects, by
 * the kind's own verbs. Closing verbs may always be used; another verb only on an aspect that a closing verb looks at (a valve
 * that must be closed before its line is mated).
 */
import type { Hardware } from '../campaign/campaign.ts';
import type { Kind, Verb } from '../kinds/kind.ts';
import { type Basis, verbSeconds } from './step-time.ts';

/** What holds a piece while it is worked on; of itself it says nothing of leaving it (the kinds do not judge it). */
export const RETAINER = 'retainer';

export interface ClosingSequence {
  readonly verbs: readonly Verb[];
  /** At pace 1. */
  readonly durationS: number;
}

/** @param done whether the piece may be left with these values, by aspect id. @returns null: no verbs lead there. */
export function closePiece(
  kind: Kind,
  piece: Hardware,
  values: ReadonlyMap<string, string>,
  done: (values: ReadonlyMap<string, string>) => boolean,
  basis: Basis,
  allowed: (verb: Verb) => boolean,
): ClosingSequence | null {
  const looked = new Set(
    kind.verbs.filter((verb) => verb.closing).flatMap((verb) => (verb.alsoNeeds ?? []).map((also) => also.aspect)),
  );
  const usable = kind.verbs.filter((verb) => verb.leaves !== null && allowed(verb));
  const keyOf = (at: ReadonlyMap<string, string>): string => kind.aspects.map(({ id }) => at.get(id) ?? '').join('|');
  interface Reached {
    readonly values: ReadonlyMap<string, string>;
    readonly durationS: number;
    readonly verbs: readonly Verb[];
  }
  const open: Reached[] = [{ values, durationS: 0, verbs: [] }];
  const closed = new Set<string>();
  for (;;) {
    open.sort((a, b) => a.durationS - b.durationS);
    const next = open.shift();
    if (next === undefined) return null;
    if (done(next.values)) return { verbs: inOrder(next.verbs), durationS: next.durationS };
    const key = keyOf(next.values);
    if (closed.has(key)) continue;
    closed.add(key);
    for (const verb of usable) {
      const aspect = verb.aspect ?? kind.aspects[0]?.id;
      if (aspect === undefined || (!verb.closing && !looked.has(aspect) && aspect !== RETAINER)) continue;
      if (verb.needs.length > 0 && !verb.needs.includes(next.values.get(aspect) ?? '')) continue;
      if (!(verb.alsoNeeds ?? []).every((also) => also.values.includes(next.values.get(also.aspect) ?? ''))) continue;
      open.push({
        values: new Map(next.values).set(aspect, verb.leaves as string),
        durationS: next.durationS + verbSeconds(verb, piece, 1, basis),
        verbs: [...next.verbs, verb],
      });
    }
  }
}

/** Nobody lets go of a piece before it stands by itself. */
function inOrder(verbs: readonly Verb[]): readonly Verb[] {
  return [...verbs].sort((a, b) => Number(a.aspect === RETAINER) - Number(b.aspect === RETAINER));
}
