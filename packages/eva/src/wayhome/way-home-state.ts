/**
 * The state from which a way home starts: how the hardware stands, which clocks run, which requests are in force, and for each
 * person where they are, what holds them there and what is in their hands.
 */
import type { Clock } from '../campaign/campaign.ts';
import type { Basis } from './step-time.ts';

export interface WayHomeState {
  readonly eva: string;
  readonly petS: number;
  /** Every state variable that has been written, in this EVA or before; absent ones have their initial value. */
  readonly values: ReadonlyMap<string, string>;
  /** Who wrote a variable last within this EVA (stint key or event id). Only these are anybody's to close. */
  readonly writtenBy: ReadonlyMap<string, string>;
  /** Request ids in force. */
  readonly inForce: ReadonlySet<string>;
  readonly clocks: readonly RunningClock[];
  readonly people: readonly PersonNow[];
  /** Stints whose latest step the text calls a safe stop (true) or none (false). */
  readonly said: readonly { readonly stint: string; readonly safeStop: boolean }[];
}

export interface RunningClock {
  readonly clock: Clock;
  /** What is left of it at `petS`; negative: it has run out. */
  readonly leftS: number;
}

/** A person who is outside, or on the way through the hatch. Whoever is inside is not listed. */
export interface PersonNow {
  readonly person: string;
  /** Where they can begin from: two on a rail, back or on, each with the time to get there. Empty: no way is known. */
  readonly starts: readonly Start[];
  /** In the hatch already: nobody else passes before. */
  readonly inHatch: boolean;
  /** Of their own passage that is left; null: the whole. */
  readonly passageLeftS: number | null;
  /** Hardware in their hands that belongs to a load class. */
  readonly loads: readonly string[];
  /** Why `starts` is empty. */
  readonly stuck: string | null;
}

export interface Start {
  /** Work can be done here after `delayS`. */
  readonly place: string;
  /** Before anything else: to the end of the rail, of the ride. */
  readonly delayS: number;
  readonly delayWords: string | null;
  /** Before leaving `place`: out of the restraint, off the plate. */
  readonly leaveS: number;
  readonly leaveWords: string | null;
  /** Where one stands after that. */
  readonly exit: string;
}

export type Mode = 'terminate' | 'abort' | 'assist';
export const MODES: readonly Mode[] = ['terminate', 'abort', 'assist'];
export type ArmIs = 'alive' | 'dead';

export interface WayHomeCase {
  /** Assist: who cannot move; absent: each is tried, and the longer way counts. */
  readonly victim?: string;
  readonly mode: Mode;
  readonly arm: ArmIs;
  /** Which percentiles are added up (see step-time.ts). */
  readonly basis: Basis;
}
