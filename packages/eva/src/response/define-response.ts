/**
 * A stock response: what a crew does when something goes wrong, in sentences, as far as it is common practice. Each is a
 * planning figure and a memory aid; the operator's own procedures replace it, and their flight rules prevail (PREVAIL stands on
 * every card made from it).
 */
import type { Mode } from '../wayhome/way-home-state.ts';

export const PREVAIL = "The operator's flight rules and procedures prevail.";

/** self: who has the trouble. partner: the other one outside. reader: who reads the steps inside. operator: of the arm. */
export type Actor = 'self' | 'partner' | 'both' | 'reader' | 'operator';

export interface StockResponse {
  readonly id: string;
  readonly title: string;
  /** What is seen, heard or felt. */
  readonly trigger: string;
  /** Kinds of hardware that it concerns; empty: it can come up anywhere. A hatch is also in hand while the vehicle's own is closed. */
  readonly kinds: readonly string[];
  /** Verbs at which it comes up on a piece of these kinds; empty: at any. */
  readonly verbs: readonly string[];
  /** One sentence a step, in order, with who does it. */
  readonly steps: readonly (readonly [Actor, string])[];
  /** Seconds: 10th, 50th, 90th percentile of the immediate actions, before any way home. */
  readonly timeS: { readonly low: number; readonly likely: number; readonly high: number };
  /** Kinds of tools that must be outside with the crew. */
  readonly kit: readonly string[];
  /** How things stand when it has worked, and when it has not. */
  readonly outcome: string;
  /** When it has not worked: the value that its piece is left in (first aspect of each of `kinds`); null: none, or it leads home. */
  readonly leavesIt: string | null;
  /** The way home that it leads to at once; null: work goes on after it. */
  readonly leadsTo: Mode | null;
  /** The arm does not move from then on. */
  readonly armStops: boolean;
  readonly source: string;
}

export function defineResponse(response: StockResponse): StockResponse {
  return response;
}
