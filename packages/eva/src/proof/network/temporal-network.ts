/**
 * The network that the crew will really follow: events, links that somebody sees to, links whose length nobody picks. Derived from
 * a timeline, but as little bound by it as can be: its order counts, its times do not. PET 0 may slip, so windows hang on UTC and
 * all else on PET 0.
 */
import type { Span } from '../../campaign/span.ts';

export interface TemporalNetwork {
  readonly eva: string;
  readonly events: readonly NetworkEvent[];
  readonly requirements: readonly RequirementLink[];
  readonly contingents: readonly ContingentLink[];
  /** Event of PET 0; event 0 is the earliest instant that anything may happen, event 1 the planned egress in UTC. */
  readonly petZero: number;
  /** Both on vehicle supplies, hatch closed. */
  readonly bothIn: number;
  /** Event of a boundary of a planned stint (0: its start; number of steps: its end). */
  readonly boundaries: ReadonlyMap<string, ReadonlyMap<number, number>>;
  readonly requestEvents: readonly RequestEvents[];
  /** Ways hand over hand; those of one person in order of time. */
  readonly ways: readonly WayEvents[];
  /** Passages through the hatch in order of time; `person` null: closing it. */
  readonly passages: readonly PassageEvents[];
  /** Outside events of this EVA: id → event. */
  readonly outside: ReadonlyMap<string, number>;
  /** Everybody and everything that an event can belong to. */
  readonly lanes: readonly string[];
  /** What was read in some way because nothing is stated, in words. */
  readonly assumptions: readonly string[];
}

export interface NetworkEvent {
  /** "the start of "Free the mast"", "EV2's arrival at mast-foot". */
  readonly words: string;
  /** Persons and arms that see it, "IV" for the reader. */
  readonly lanes: readonly string[];
  /** As planned, PET. */
  readonly plannedS: number;
  readonly stint: string | null;
  readonly boundary: number | null;
}

/** Why a link is there. `own`: one body does one thing after another. */
export type LinkKind =
  | 'own'
  | 'same-time'
  | 'join'
  | 'lag'
  | 'pin'
  | 'gate'
  | 'hatch'
  | 'restraint'
  | 'tool'
  | 'item'
  | 'arm'
  | 'voice'
  | 'request'
  | 'window'
  | 'clock'
  | 'wall'
  | 'hold';

/** leastS ≤ to − from ≤ mostS; null: no bound on that side. */
export interface RequirementLink {
  readonly from: number;
  readonly to: number;
  readonly leastS: number | null;
  /** `leastS` where the call is heard and acted on at once: what every execution keeps. Absent: no call is waited for. */
  readonly atOnceS?: number;
  readonly mostS: number | null;
  readonly kind: LinkKind;
  /** In trade words: "Restraint 1 passes from EV1 to EV2". */
  readonly reason: string;
  readonly span: Span | null;
}

export interface ContingentLink {
  readonly from: number;
  readonly to: number;
  readonly leastS: number;
  readonly mostS: number;
  /** Planning figure. */
  readonly plannedS: number;
  readonly kind: 'work' | 'move' | 'passage' | 'request' | 'slip';
  readonly reason: string;
  /** Whether bounds are stated; false: the planning figure is taken as exact. */
  readonly bounded: boolean;
  /** How long after its end others hear of it. */
  readonly delayS: number;
  readonly span: Span | null;
}

export interface RequestEvents {
  readonly request: string;
  readonly verified: number;
  /** The call that it may be cleared: from then on nothing may rest on it. */
  readonly clearCall: number;
}

export interface PassageEvents {
  readonly person: string | null;
  readonly start: number;
  readonly end: number;
}

export interface WayEvents {
  readonly who: string;
  readonly start: number;
  readonly end: number;
  /** Places passed, both ends included. */
  readonly path: readonly string[];
  /** Anchor that the tether runs from at its end; null: not modelled. */
  readonly anchor: string | null;
  /** Key of the stint that the way leads to; null: the hatch. */
  readonly next: string | null;
  /** Key of the stint that it comes from; null: the hatch. */
  readonly last: string | null;
}
