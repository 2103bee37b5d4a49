/**
 * Writes one verb of a kind without repeating what most verbs have in common. What can hurt is never left to a default here:
 * a kind whose verbs can be live names `underControl` itself.
 */
import type { Verb } from './kind.ts';

/** The times in the standard library are planning figures for a trained crew at pace 1, to be replaced by an operator's own. */
export const PLANNING_FIGURE = 'common practice, planning figure';

type VerbDetails = Partial<Omit<Verb, 'id' | 'sentence' | 'timeS'>>;

/**
 * @param id the word in the text
 * @param sentence how it reads aloud; `{object}` stands for the hardware's title
 * @param timeS low, likely, high (10th, 50th, 90th percentile), seconds for one piece at pace 1
 */
export function defineVerb(
  id: string,
  sentence: string,
  timeS: readonly [low: number, likely: number, high: number],
  details: VerbDetails = {},
): Verb {
  return {
    id,
    sentence,
    timeS: { low: timeS[0], likely: timeS[1], high: timeS[2] },
    aspect: details.aspect ?? null,
    needs: details.needs ?? [],
    ...(details.alsoNeeds === undefined ? {} : { alsoNeeds: details.alsoNeeds }),
    leaves: details.leaves ?? null,
    carry: details.carry ?? 'none',
    perTurnS: details.perTurnS ?? null,
    toolKinds: details.toolKinds ?? [],
    underControl: details.underControl ?? false,
    effort: details.effort ?? 'low',
    voice: details.voice ?? false,
    closing: details.closing ?? false,
    source: details.source ?? PLANNING_FIGURE,
  };
}
