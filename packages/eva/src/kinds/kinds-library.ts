/** The kinds library: what is known of every sort of hardware, pinned by id and version in each campaign. */
import { Fault } from '@handrail/quantity/fault';
import type { Kind, Verb } from './kind.ts';
import { library } from './library.generated.ts';

export interface KindsLibrary {
  readonly id: string;
  readonly version: string;
  /** By kind id. */
  readonly kinds: ReadonlyMap<string, Kind>;
  /** By verb word: each kind that knows it. */
  readonly verbs: ReadonlyMap<string, readonly { readonly kind: Kind; readonly verb: Verb }[]>;
}

/** The kind of people, and of steps without an object ("rest", "glove-check"). */
export const CREW_KIND = 'crew';
/** The kind of a place named as a step's object ("inspect spine-2"). */
export const PLACE_KIND = 'place';
/** The kind of an arm named as a step's object or doing a step without one ("park"). */
export const ARM_KIND = 'arm';

/**
 * A library from kinds.
 *
 * @throws Fault `kinds/twice` when two kinds share an id, or a kind has the same verb twice.
 */
export function buildKindsLibrary(id: string, version: string, kinds: readonly Kind[]): KindsLibrary {
  const byId = new Map<string, Kind>();
  const verbs = new Map<string, { kind: Kind; verb: Verb }[]>();
  for (const kind of kinds) {
    if (byId.has(kind.id))
      throw new Fault('kinds/twice', `two kinds are called ${kind.id}`, { values: { kind: kind.id } });
    byId.set(kind.id, kind);
    const own = new Set<string>();
    for (const verb of kind.verbs) {
      if (own.has(verb.id)) {
        throw new Fault('kinds/twice', `kind ${kind.id} has the verb ${verb.id} twice`, {
          values: { kind: kind.id, verb: verb.id },
        });
      }
      own.add(verb.id);
      const list = verbs.get(verb.id) ?? [];
      list.push({ kind, verb });
      verbs.set(verb.id, list);
    }
  }
  return { id, version, kinds: byId, verbs };
}

export const standardLibrary: KindsLibrary = buildKindsLibrary('standard', '1', library);

/** The verb of this word for this kind; null when the kind does not know it. */
export function verbOf(library: KindsLibrary, kindId: string, verbId: string): Verb | null {
  return library.kinds.get(kindId)?.verbs.find((verb) => verb.id === verbId) ?? null;
}
