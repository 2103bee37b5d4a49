/**
 * A simple temporal network with uncertainty: events, requirement links that the executor must keep, contingent links whose
 * length nature picks within bounds. Whole seconds. It has never heard of a spacewalk; `proof/network` builds it.
 *
 * @source [MMV01] the network and what dynamic controllability means
 */
export interface Stnu {
  /** Events are numbered 0 … events − 1. */
  readonly events: number;
  readonly requirements: readonly StnuRequirement[];
  readonly contingents: readonly StnuContingent[];
  /**
   * Which lanes (bits) an event belongs to; absent: none. Where an event shares a lane with the end of a contingent link, whoever
   * decides on it sees that end at once. Everybody else hears of it `delayS` later.
   */
  readonly lanes?: readonly number[];
}

/** leastS ≤ to − from ≤ mostS; null: no bound on that side. */
export interface StnuRequirement {
  readonly from: number;
  readonly to: number;
  readonly leastS: number | null;
  readonly mostS: number | null;
}

/** 0 ≤ leastS ≤ mostS. The executor starts it (or another contingent link does), nature ends it; one link per end. */
export interface StnuContingent {
  readonly from: number;
  readonly to: number;
  readonly leastS: number;
  readonly mostS: number;
  /** How long after its end those outside its lanes can act on it; absent: 0. */
  readonly delayS?: number;
}
