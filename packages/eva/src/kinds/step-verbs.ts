/**
 * Which verb of which kind a sentence means, object by object: "demate j1 j2" is the power connector's demate, twice. A step
 * without an object belongs to the crew, or to the arm that does it.
 */
import type { Hardware, Step } from '../campaign/campaign.ts';
import type { Kind, Verb } from './kind.ts';
import { ARM_KIND, CREW_KIND, type KindsLibrary, PLACE_KIND, verbOf } from './kinds-library.ts';

export interface StepVerb {
  /** Hardware, place, person or arm id; null for a step without an object. */
  readonly object: string | null;
  /** null when the object is not hardware. */
  readonly hardware: Hardware | null;
  readonly kind: Kind;
  readonly verb: Verb;
}

export interface StepVerbs {
  readonly known: readonly StepVerb[];
  /** Objects (or null: the step itself) whose kind does not know the verb, in words. */
  readonly unknown: readonly { readonly object: string | null; readonly words: string }[];
}

/** Kinds that a word may belong to when the object is no hardware, in the order in which they are asked. */
const WITHOUT_HARDWARE = [CREW_KIND, PLACE_KIND, ARM_KIND];

export function stepVerbs(step: Step, hardware: ReadonlyMap<string, Hardware>, library: KindsLibrary): StepVerbs {
  const known: StepVerb[] = [];
  const unknown: { object: string | null; words: string }[] = [];
  const objects: readonly (string | null)[] = step.objects.length === 0 ? [null] : step.objects;
  for (const object of objects) {
    const piece = object === null ? null : (hardware.get(object) ?? null);
    const kinds =
      piece === null ? (step.by === 'arm' ? [ARM_KIND, ...WITHOUT_HARDWARE] : WITHOUT_HARDWARE) : [piece.kind];
    const found = firstWithVerb(kinds, step.verb, library);
    if (found !== null) known.push({ object, hardware: piece, ...found });
    else unknown.push({ object, words: wordsFor(object, piece, step.verb, library) });
  }
  return { known, unknown };
}

function firstWithVerb(
  kinds: readonly string[],
  word: string,
  library: KindsLibrary,
): { kind: Kind; verb: Verb } | null {
  for (const id of kinds) {
    const kind = library.kinds.get(id);
    const verb = verbOf(library, id, word);
    if (kind !== undefined && verb !== null) return { kind, verb };
  }
  return null;
}

function wordsFor(object: string | null, piece: Hardware | null, word: string, library: KindsLibrary): string {
  if (object === null) return `"${word}" without an object is not a verb of the crew or of an arm`;
  if (piece === null)
    return `"${word} ${object}": ${object} is no hardware, and no crew, place or arm verb reads "${word}"`;
  const kind = library.kinds.get(piece.kind);
  if (kind === undefined) return `"${word} ${object}": the library has no kind "${piece.kind}"`;
  return `"${word} ${object}": a ${kind.title.toLowerCase()} has no verb "${word}"; it has ${kind.verbs.map((v) => v.id).join(', ')}`;
}
