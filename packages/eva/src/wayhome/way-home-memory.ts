/**
 * What is known of the ways home of one campaign, by what they rest on and not by when it is: after an edit of the plan most pairs of
 * progress leave the same hardware open, with the same people at the same places, and their ways stand.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { TravelTable } from '../vehicle/travel-table.ts';
import type { ClosingWork } from './closing-jobs.ts';
import type { Horizon } from './horizon.ts';
import type { SafeUntil, WayHomeGround } from './safe-until.ts';
import type { WayHome } from './way-home-plan.ts';
import type { WaysOfPair } from './worst-of-ways.ts';

export interface KnownWork {
  readonly work: ClosingWork;
  /** Equal numbers are equal work. */
  readonly signature: number;
  readonly stopsClocks: boolean;
}

/** Beyond this a memory is not gone on with: a day's edits of a large campaign stay below some hundred megabytes. */
const MOST_WAYS = 150_000;

export class WayHomeMemory {
  readonly works = new Map<string, KnownWork>();
  readonly opens = new Map<string, SafeUntil>();
  readonly ways = new Map<string, WayHome>();
  readonly pairs = new Map<string, WaysOfPair>();
  /** By person and state of the rails. */
  readonly tables = new Map<string, TravelTable>();
  private readonly numbers = new Map<string, number>();

  /** A number for a text: equal texts, equal numbers. */
  numberOf(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.numbers.size);
    return this.numbers.size - 1;
  }
}

interface Kept {
  readonly ground: WayHomeGround;
  readonly horizon: Horizon;
  readonly memory: WayHomeMemory;
}
const kept = new WeakMap<Campaign, Kept[]>();

/** The memory of this campaign, hardware, library and horizon. */
export function memoryOf(ground: WayHomeGround, horizon: Horizon): WayHomeMemory {
  const { campaign, hardware, library } = ground;
  const known = (kept.get(campaign) ?? []).filter(({ memory }) => memory.ways.size < MOST_WAYS);
  const same = known.find(
    (one) => one.ground.hardware === hardware && one.ground.library === library && one.horizon === horizon,
  );
  const found = same ?? { ground, horizon, memory: new WayHomeMemory() };
  kept.set(campaign, same === undefined ? [...known, found] : known);
  return found.memory;
}
