/**
 * Travel times between all places, hand over hand, for each load class: the table that scheduling and the home figures read.
 *
 * A move is a shortest way over place × anchor. While on one anchor a person stays in its region (tether-region.ts); where an
 * anchor stands the tether may be moved to it, which takes `limits.tether-swap`. At each place a person works on the anchor
 * that the quickest way out from the hatch leaves them on, and every move ends on that anchor: so the times add up along a
 * chain of moves, whatever the chain. The triangle inequality holds among moves of one load class; not across classes.
 *
 * Where the start anchor, the reel length, the swap time, the hatch or the length of a rail is not stated, tethers are not
 * modelled for that person and `defaults` says so. Without a person named, the slowest of the outside persons counts.
 */
import { Fault } from '@handrail/quantity/fault';
import type { Campaign, DefaultUsed, Person } from '../campaign/campaign.ts';
import { railNetwork, statedValuation, type Valuation } from './rail-network.ts';
import type { TetherPath } from './tether-path.ts';
import { type Route, TetheredTravel } from './tethered-travel.ts';

export interface TravelOptions {
  /** Values of the variables that rails depend on. Absent: those stated for the campaign's start; what is unknown opens nothing. */
  readonly valuation?: Valuation;
  /** Person id whose start anchor and reel count; absent: all outside persons, the slowest. */
  readonly person?: string;
}

export interface TravelTable {
  /** Seconds from place to place, not rounded; null: no way in this state with this load. `loadClass` null: hands free. */
  secondsBetween(from: string, to: string, loadClass: string | null, pace: number): number | null;
  pathBetween(from: string, to: string, loadClass: string | null): readonly string[] | null;
  /** Path, swaps and time in one. */
  routeBetween(from: string, to: string, loadClass: string | null): Route | null;
  /** Unladen to the hatch; 0 at level 0, where no places are given; null: no way. */
  homeSeconds(place: string, pace: number): number | null;
  /** One rail between neighbours, the quickest open one, at pace 1; Infinity: none. */
  railSeconds(from: string, to: string, loadClass: string | null): number;
  /** Anchor on which a person works at a place; null: not modelled, or out of reach. */
  anchorAt(place: string): string | null;
  /** How the safety tether lies to a person who works at a place; null: not modelled, or out of reach. */
  tetherAt(place: string): TetherPath | null;
  /** What was not stated and how it was read. */
  readonly defaults: readonly DefaultUsed[];
}

/**
 * Builds the table; rows are worked out when first asked for and kept.
 * @throws Fault `routes/unknown-place`, `routes/unknown-load-class`, `routes/unknown-person` from the table's functions.
 */
export function travelTable(campaign: Campaign, options: TravelOptions = {}): TravelTable {
  const network = railNetwork(campaign, options.valuation ?? statedValuation(campaign));
  const people = travellers(campaign, options.person ?? null);
  const defaults: DefaultUsed[] = [];
  const layers = people.map((person) => new TetheredTravel(campaign, network, person, defaults));
  const hatch = campaign.vehicle.hatch;
  const slowest = (from: string, to: string, loadClass: string | null): Route | null => {
    let found: Route | null = null;
    for (const layer of layers) {
      const route = layer.route(from, to, loadClass);
      if (route === null) return null;
      if (found === null || route.seconds > found.seconds) found = route;
    }
    return found;
  };
  const secondsBetween = (from: string, to: string, loadClass: string | null, pace: number): number | null => {
    let slowestS = 0;
    for (const layer of layers) {
      const seconds = layer.seconds(from, to, loadClass);
      if (seconds === null) return null;
      if (seconds > slowestS) slowestS = seconds;
    }
    return slowestS * pace;
  };
  return {
    secondsBetween,
    pathBetween: (from, to, loadClass) => slowest(from, to, loadClass)?.path ?? null,
    routeBetween: slowest,
    homeSeconds: (place, pace) => (hatch === null ? 0 : secondsBetween(place, hatch, null, pace)),
    railSeconds: (from, to, loadClass) => layers[0]?.railSeconds(from, to, loadClass) ?? Number.POSITIVE_INFINITY,
    anchorAt: (place) => layers[0]?.anchorAt(place) ?? null,
    tetherAt: (place) => layers[0]?.tetherAt(place) ?? null,
    defaults,
  };
}

/** The persons whose tethers differ; one without a tether when there is nobody outside. */
function travellers(campaign: Campaign, id: string | null): readonly (Person | null)[] {
  if (id !== null) {
    const person = campaign.people.find((candidate) => candidate.id === id);
    if (person === undefined) {
      throw new Fault('routes/unknown-person', `no person ${id} in the campaign`, { values: { person: id } });
    }
    return [person];
  }
  const kept = new Map<string, Person>();
  for (const person of campaign.people) {
    if (person.role !== 'outside') continue;
    const tether = `${person.startAnchor ?? ''}|${person.tetherLengthM ?? ''}`;
    if (!kept.has(tether)) kept.set(tether, person);
  }
  return kept.size === 0 ? [null] : [...kept.values()];
}
