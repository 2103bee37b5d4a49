/**
 * What a claim stands on beside replay, order and timing, as data: the ways home, the supplies, the rules, the input level, the age
 * of what was computed from. It is worked out elsewhere and joins the same verdict, the same hash and the same sentence.
 */
import type { InputLevel } from '../../campaign/input-level.ts';
import type { Finding } from '../../finding/finding.ts';
import type { SupplyName } from '../../suit/supply-curve.ts';
import type { Mode } from '../../wayhome/way-home-state.ts';

/** The least margin of one mode over every pair of progress of an EVA. */
export interface ModeMargin {
  readonly eva: string;
  readonly mode: Mode;
  /**
   * Over the pairs whose way home is known: the margin is this or less, and less cannot be ruled out where `unknownS` or
   * `committedS` is above 0. null: cannot be told from any minute.
   */
  readonly leastS: number | null;
  readonly atPetS: number | null;
  /** What must not be passed, in words; null: nothing is stated. */
  readonly limit: { readonly petS: number; readonly cause: string } | null;
  /** Seconds of the EVA in which somebody may stand where the way home is unknown. */
  readonly unknownS: number;
  /** Seconds in which no safe stop is in reach of somebody. */
  readonly committedS: number;
}

/** What one person has left of one supply, at the quantile of the claim. */
export interface SupplyMargin {
  readonly eva: string;
  readonly person: string;
  readonly supply: SupplyName;
  /** kg or J above the reserve with the hatch closed as planned. */
  readonly atBothIn: number;
  readonly unit: 'kg' | 'J';
  /** PET at which the reserve is reached; null: not within the curve. */
  readonly lastsUntilS: number | null;
  /** PET by which both are in for all durations in D: the wall; the planned both-in where none is stated. */
  readonly neededUntilS: number;
}

export interface ClaimParts {
  /** Ids of what was checked beside replay and proof. */
  readonly requirements: readonly string[];
  /** Waivers not applied yet. */
  readonly findings: readonly Finding[];
  readonly margins: readonly ModeMargin[];
  readonly supplies: readonly SupplyMargin[];
  /** q, in (0, 1): of the ways home and the supplies. */
  readonly quantile: number;
  readonly level: InputLevel;
  /** Days between the epoch of the orbit's elements and the egress of each EVA; empty: nothing is computed from an orbit. */
  readonly dataAge: readonly { readonly eva: string; readonly days: number }[];
}
