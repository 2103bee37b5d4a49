/**
 * The timeline: who does what when, with moves, waits and joins. The answer of planning, the input of every check, and what
 * a person may also write by hand. All times are integer seconds of PET; UTC stands beside where a reader needs it.
 */
export interface Timeline {
  readonly format: 'handrail-timeline';
  readonly version: 1;
  readonly campaign: string;
  readonly documentHash: string;
  readonly library: { readonly id: string; readonly version: string };
  readonly evas: readonly EvaTimeline[];
  /** Tasks in no EVA, each with the reason in trade words. */
  readonly leftOut: readonly { readonly task: string; readonly why: string }[];
}

export interface EvaTimeline {
  readonly eva: string;
  readonly petZeroUtcMs: number;
  /** Tasks planned in this EVA. */
  readonly tasks: readonly string[];
  /** By start time, then person. */
  readonly stints: readonly PlannedStint[];
  /** Hatch passages and closing. */
  readonly passages: readonly PlannedPassage[];
  /** Hand-over-hand moves, arm transfers without rider. Rides are stints. */
  readonly moves: readonly PlannedMove[];
  readonly holds: readonly RequestHold[];
  readonly joins: readonly { readonly join: string; readonly releasedS: number; readonly waitsUntilS: number }[];
  /** Both on vehicle supplies, hatch closed. */
  readonly bothInS: number;
  /** The wall: both must be in by then, and why; null: no limit is stated. */
  readonly wall: { readonly petS: number; readonly cause: string } | null;
  readonly claim: Claim;
}

export interface PlannedStint {
  /** Stint key. */
  readonly stint: string;
  readonly startS: number;
  readonly endS: number;
  /** Index = role index in the stint. */
  readonly assigned: readonly string[];
  /** End of each step. */
  readonly stepEndsS: readonly number[];
}

export interface PlannedPassage {
  readonly kind: 'egress' | 'ingress' | 'close-hatch';
  /** null for close-hatch. */
  readonly person: string | null;
  readonly startS: number;
  readonly endS: number;
}

export interface PlannedMove {
  /** Person or arm id. */
  readonly who: string;
  /** Places (for an arm: poses). */
  readonly from: string;
  readonly to: string;
  readonly startS: number;
  readonly endS: number;
  /** Places passed, from and to included; for an arm: the two poses. */
  readonly path: readonly string[];
  /** Anchor the tether runs from at the end of the move; null when anchors are not modelled. */
  readonly anchor: string | null;
  /** Items carried in hand. */
  readonly carrying: readonly string[];
}

/** A request in force: asked, set, verified, used over [firstUseS, lastUseS], cleared. */
export interface RequestHold {
  readonly request: string;
  readonly askS: number;
  readonly verifiedS: number;
  readonly firstUseS: number;
  readonly lastUseS: number;
  readonly clearedS: number;
}

/** What the planner says of its own answer, level by level; never "verified". */
export interface Claim {
  readonly status: 'optimal for these durations' | 'best found' | 'written by hand';
  readonly levels: readonly {
    /** "rank", "margin", "finish", "travel". */
    readonly name: string;
    readonly unit: 'weight' | 's';
    readonly value: number | null;
    readonly bound: number | null;
    readonly proved: boolean;
  }[];
  readonly seed: number;
  readonly conflicts: number;
}
