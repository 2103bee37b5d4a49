/**
 * What the library knows of a sort of hardware: its states, its verbs, their times, what is safe to leave. One kind = one
 * file in `library/`, one exported `defineKind({...})`, found through the generated registry.
 */
export interface Kind {
  readonly id: string;
  readonly title: string;
  /** One or two sentences for the reference page. */
  readonly about: string;
  /** State variables of one piece; the first is the one that a bare id names. Empty for kinds without a state of their own. */
  readonly aspects: readonly Aspect[];
  /** A loose piece: it can be carried, so it also has a `holder`. */
  readonly carried: boolean;
  /** A bag, socket, box or person-worn carrier: other pieces can be in it. */
  readonly holds: 'nothing' | 'items' | 'one-restraint' | 'one-item';
  readonly verbs: readonly Verb[];
  /** Extra properties it may bear in the text, with dimension and meaning. */
  readonly properties: readonly KindProperty[];
  /**
   * What a piece of this kind does for the piece that it belongs to (`of`): a fastener holds it, a line feeds it. `free`: the
   * values in which it no longer does; `fast`: the values in which it does. Absent: neither.
   */
  readonly attaches?: {
    readonly as: 'fastener' | 'line';
    readonly free: readonly string[];
    readonly fast: readonly string[];
  };
  /**
   * For pieces that are fitted and taken off: the value of the first aspect with all fasteners fast, and the value with
   * none, still on its guides; `inPlace`: every value in which its fasteners can be worked. Absent: it is not fastened by other pieces.
   */
  readonly seating?: { readonly fastened: string; readonly seated: string; readonly inPlace: readonly string[] };
  readonly source: string;
}

export interface Aspect {
  readonly id: string;
  readonly values: readonly string[];
  /** What a value means for leaving it: safe for ever, until the next EVA, tonight, or not at all. Absent: unknown. */
  readonly safe: Readonly<Record<string, SafeUntil>>;
}
export type SafeUntil = 'always' | 'next-eva' | 'tonight' | 'never';

export interface Verb {
  readonly id: string;
  /** How it reads aloud: "Release bolt {object}". */
  readonly sentence: string;
  readonly aspect: string | null;
  /** Values it may start from; empty: it does not look. */
  readonly needs: readonly string[];
  /** Further aspects of the same piece that must stand so: the valve of a line is closed before it is opened. Absent: none. */
  readonly alsoNeeds?: readonly { readonly aspect: string; readonly values: readonly string[] }[];
  /** The value it leaves; null: it changes nothing (inspect, check). */
  readonly leaves: string | null;
  /** What it does to the holder of a carried piece. */
  readonly carry: 'none' | 'take' | 'put' | 'hand-over' | 'stow' | 'seat' | 'unseat';
  /** Seconds for one piece at pace 1: 10th, 50th, 90th percentile; the planning figure is the 50th. */
  readonly timeS: { readonly low: number; readonly likely: number; readonly high: number };
  /** Adds turns/speed for driven fasteners. */
  readonly perTurnS: number | null;
  /** A tool of one of these kinds must be in hand. */
  readonly toolKinds: readonly string[];
  /** It must not be done live: `controls` of the piece must be set and verified. */
  readonly underControl: boolean;
  /** low, moderate, high: for supplies. */
  readonly effort: 'low' | 'moderate' | 'high';
  /** IV reads it step by step. */
  readonly voice: boolean;
  /** A verb that undoes or closes, for terminate: brings the aspect to a value safe for the night. */
  readonly closing: boolean;
  readonly source: string;
}

export interface KindProperty {
  readonly id: string;
  readonly type:
    | 'number'
    | 'text'
    | 'boolean'
    | 'torque'
    | 'time'
    | 'length'
    | 'mass'
    | 'angle'
    | 'force'
    | 'rotation-rate'
    | 'temperature'
    | 'reference';
  readonly about: string;
}

export function defineKind(kind: Kind): Kind {
  return kind;
}
