/**
 * A stock response: what a crew does when something goes wrong, in sentences, as far as it is common practice. Each is a
 * planning figure and a memory aid; the operator's own procedures replace it, and their flight rules prevail (PREVAIL stands on
 * every card made from it).
 */
import type { Mode } from '../wayhome/way-home-state.ts';

export const PREVAIL = "The operator's flight rules and procedures prevail.";

export interface StockResponse {
  readonly id: string;
  readonly title: string;
  /** What is seen, heard or felt. */
  readonly trigger: string;
  /** Kinds of hardware that it concerns; empty: it can come up anywhere. */
  readonly kinds: readonly string[];
  /** One sentence a step, in order. */
  readonly steps: readonly string[];
  /** Seconds: 10th, 50th, 90th percentile of the immediate actions, before any way home. */
  readonly timeS: { readonly low: number; readonly likely: number; readonly high: number };
  /** Kinds of tools that must be outside with the crew. */
  readonly kit: readonly string[];
  /** How things stand when it has worked, and when it has not. */
  readonly outcome: string;
  /** The way home that it leads to at once; null: work goes on after it. */
  readonly leadsTo: Mode | null;
  /** The arm does not move from then on. */
  readonly armStops: boolean;
  readonly source: string;
}

export function defineResponse(response: StockResponse): StockResponse {
  return response;
}
