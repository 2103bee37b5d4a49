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
import type { Campaign, DefaultUsed, LoadClass, Person } from '../campaign/campaign.ts';
import { modelledTether } from './modelled-tether.ts';
import { type RailNetwork, railNetwork, statedValuation, type Valuation } from './rail-network.ts';
import { type ShortestTimes, shortestTimes } from './shortest-times.ts';
import { type TetherRegion, tetherRegion, untetheredRegion } from './tether-region.ts';

export interface TravelOptions {
  /** Values of the variables that rails depend on. Absent: those stated for the campaign's start; what is unknown opens nothing. */
  readonly valuation?: Valuation;
  /** Person id whose start anchor and reel count; absent: all outside persons, the slowest. */
  readonly person?: string;
}

export interface Route {
  /** At pace 1, seconds, load factor and tether swaps included. */
  readonly seconds: number;
  /** Places passed, both ends included. */
  readonly path: readonly string[];
  /** Where the tether is moved: the index in `path` and the anchor that it is moved to. */
  readonly swaps: readonly { readonly at: number; readonly anchor: string }[];
  /** Anchor at the end; null where anchors are not modelled. */
  readonly anchor: string | null;
}

export interface TravelTable {
  /** Seconds from place to place, not rounded; null: no way in this state with this load. `loadClass` null: hands free. */
  secondsBetween(from: string, to: string, loadClass: string | null, pace: number): number | null;
  pathBetween(from: string, to: string, loadClass: string | null): readonly string[] | null;
  /** Path, swaps and time in one. */
  routeBetween(from: string, to: string, loadClass: string | null): Route | null;
  /** Unladen to the hatch; 0 at level 0, where no places are given; null: no way. */
  homeSeconds(place: string, pace: number): number | null;
  /** Anchor on which a person works at a place; null: not modelled, or out of reach. */
  anchorAt(place: string): string | null;
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
    anchorAt: (place) => layers[0]?.anchorAt(place) ?? null,
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

interface AnchorPoint {
  readonly id: string | null;
  readonly place: number;
  readonly region: TetherRegion;
  /** Arc times in the region and rows from the standing positions, by load class ('' for none). */
  readonly byLoad: Map<string, { readonly timeS: Float64Array; readonly rows: (ShortestTimes | undefined)[] }>;
}

/** One person's travel: regions of the anchors, and swaps between them. */
class TetheredTravel {
  private readonly network: RailNetwork;
  private readonly loads: ReadonlyMap<string, LoadClass>;
  private readonly swapS: number;
  private readonly anchors: readonly AnchorPoint[];
  /** Anchor index by place; −1: out of reach. */
  private readonly anchorOf: Int32Array;
  /** By load: time from being on anchor a at its place to being on anchor b at its place, and the anchor before b. */
  private readonly swapTables = new Map<string, { timeS: Float64Array; before: Int32Array }>();

  constructor(campaign: Campaign, network: RailNetwork, person: Person | null, defaults: DefaultUsed[]) {
    this.network = network;
    this.loads = new Map(campaign.vehicle.loadClasses.map((load) => [load.id, load]));
    this.swapS = campaign.limits.tetherSwapS ?? 0;
    const tether = person === null ? null : modelledTether(campaign, network, person, defaults);
    if (tether === null) {
      const region = untetheredRegion(network);
      this.anchors = [{ id: null, place: -1, region, byLoad: new Map() }];
      this.anchorOf = new Int32Array(network.places.length);
      return;
    }
    this.anchors = tether.anchors.map(({ id, place }) => ({
      id,
      place,
      region: tetherRegion(network, place, tether.reelM),
      byLoad: new Map(),
    }));
    this.anchorOf = this.workingAnchors(tether.hatch, tether.start);
  }

  anchorAt(place: string): string | null {
    return this.anchors[this.anchorOf[this.placeIndex(place)] as number]?.id ?? null;
  }

  seconds(from: string, to: string, loadClass: string | null): number | null {
    const a = this.placeIndex(from);
    const b = this.placeIndex(to);
    if (a === b) return 0;
    const best = this.best(a, this.anchorOf[a] as number, b, this.anchorOf[b] as number, this.loadKey(loadClass));
    return Number.isFinite(best.timeS) ? best.timeS : null;
  }

  route(from: string, to: string, loadClass: string | null): Route | null {
    const a = this.placeIndex(from);
    const b = this.placeIndex(to);
    const x = this.anchorOf[a] as number;
    const y = this.anchorOf[b] as number;
    if (a === b) return { seconds: 0, path: [from], swaps: [], anchor: this.anchors[x]?.id ?? null };
    const load = this.loadKey(loadClass);
    const best = this.best(a, x, b, y, load);
    if (!Number.isFinite(best.timeS)) return null;
    const path = [from];
    const swaps: { at: number; anchor: string }[] = [];
    let place = a;
    let anchor = x;
    for (const next of best.firstSwap === -1 ? [] : this.swapChain(best.firstSwap, y, load)) {
      this.extend(path, anchor, place, (this.anchors[next] as AnchorPoint).place, load);
      place = (this.anchors[next] as AnchorPoint).place;
      anchor = next;
      swaps.push({ at: path.length - 1, anchor: (this.anchors[next] as AnchorPoint).id ?? '' });
    }
    this.extend(path, anchor, place, b, load);
    return { seconds: best.timeS, path, swaps, anchor: this.anchors[y]?.id ?? null };
  }

  /** Best time from (a, anchor x) to (b, anchor y), and the first anchor swapped to; −1: none. */
  private best(a: number, x: number, b: number, y: number, load: string): { timeS: number; firstSwap: number } {
    if (x === -1 || y === -1) return { timeS: Number.POSITIVE_INFINITY, firstSwap: -1 };
    let timeS = x === y ? this.within(x, a, b, load) : Number.POSITIVE_INFINITY;
    let firstSwap = -1;
    if (this.anchors.length > 1) {
      const { timeS: between } = this.swapTable(load);
      const last = this.within(y, (this.anchors[y] as AnchorPoint).place, b, load);
      if (last < timeS) {
        for (let first = 0; first < this.anchors.length; first++) {
          if (first === x) continue;
          const out = this.within(x, a, (this.anchors[first] as AnchorPoint).place, load);
          const total = out + this.swapS + (between[first * this.anchors.length + y] as number) + last;
          if (total < timeS) {
            timeS = total;
            firstSwap = first;
          }
        }
      }
    }
    return { timeS, firstSwap };
  }

  /** Time between the standing positions at two places, on one anchor. */
  private within(anchor: number, from: number, to: number, load: string): number {
    const { region } = this.anchors[anchor] as AnchorPoint;
    const source = region.standing[from] as number;
    const goal = region.standing[to] as number;
    if (source === -1 || goal === -1) return Number.POSITIVE_INFINITY;
    return this.row(anchor, source, load).timeS[goal] as number;
  }

  private row(anchor: number, source: number, load: string): ShortestTimes {
    const { region, byLoad } = this.anchors[anchor] as AnchorPoint;
    let table = byLoad.get(load);
    if (table === undefined) {
      const factor = this.loads.get(load)?.factor ?? 1;
      const timeS = Float64Array.from(region.arcs, (arc) =>
        load !== '' && arc.rail.refuses.includes(load) ? Number.POSITIVE_INFINITY : arc.durationS * factor,
      );
      table = { timeS, rows: [] };
      byLoad.set(load, table);
    }
    let row = table.rows[source];
    if (row === undefined) {
      row = shortestTimes({ nodeCount: region.nodes.length, ...region, timeS: table.timeS }, source);
      table.rows[source] = row;
    }
    return row;
  }

  /** Closure over swaps (Floyd–Warshall): on anchor a at its own place → on anchor b at b's place. */
  private swapTable(load: string): { timeS: Float64Array; before: Int32Array } {
    let table = this.swapTables.get(load);
    if (table !== undefined) return table;
    const n = this.anchors.length;
    const timeS = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY);
    const before = new Int32Array(n * n).fill(-1);
    for (let a = 0; a < n; a++) {
      for (let b = 0; b < n; b++) {
        const direct = this.within(
          a,
          (this.anchors[a] as AnchorPoint).place,
          (this.anchors[b] as AnchorPoint).place,
          load,
        );
        timeS[a * n + b] = a === b ? 0 : direct + this.swapS;
        before[a * n + b] = a;
      }
    }
    for (let k = 0; k < n; k++) {
      for (let a = 0; a < n; a++) {
        for (let b = 0; b < n; b++) {
          const through = (timeS[a * n + k] as number) + (timeS[k * n + b] as number);
          if (through < (timeS[a * n + b] as number)) {
            timeS[a * n + b] = through;
            before[a * n + b] = before[k * n + b] as number;
          }
        }
      }
    }
    table = { timeS, before };
    this.swapTables.set(load, table);
    return table;
  }

  /** Anchors swapped to, in order, from `first` to `last`. */
  private swapChain(first: number, last: number, load: string): readonly number[] {
    const { before } = this.swapTable(load);
    const chain = [last];
    while (chain[0] !== first) chain.unshift(before[first * this.anchors.length + (chain[0] as number)] as number);
    return chain;
  }

  private extend(path: string[], anchor: number, from: number, to: number, load: string): void {
    const { region } = this.anchors[anchor] as AnchorPoint;
    const source = region.standing[from] as number;
    const row = this.row(anchor, source, load);
    const passed: string[] = [];
    for (let node = region.standing[to] as number; node !== source; node = row.before[node] as number) {
      passed.push(this.network.places[(region.nodes[node] as { place: number }).place] as string);
    }
    path.push(...passed.reverse());
  }

  /** The anchor that the quickest way out from the hatch ends on; of equals the one with fewer swaps, then the first in the text. */
  private workingAnchors(hatch: number, start: number): Int32Array {
    return Int32Array.from(this.network.places, (_, place) => {
      let chosen = -1;
      let bestS = Number.POSITIVE_INFINITY;
      const order = [start, ...this.anchors.keys()].filter((anchor, at, all) => all.indexOf(anchor) === at);
      for (const anchor of order) {
        const { timeS } = this.best(hatch, start, place, anchor, '');
        if (timeS < bestS) {
          bestS = timeS;
          chosen = anchor;
        }
      }
      return chosen;
    });
  }

  private placeIndex(id: string): number {
    const index = this.network.indexOf.get(id);
    if (index === undefined)
      throw new Fault('routes/unknown-place', `no place ${id} on the vehicle`, { values: { place: id } });
    return index;
  }

  private loadKey(loadClass: string | null): string {
    if (loadClass === null) return '';
    if (!this.loads.has(loadClass)) {
      throw new Fault('routes/unknown-load-class', `no load class ${loadClass} on the vehicle`, {
        values: { loadClass, known: [...this.loads.keys()] },
      });
    }
    return loadClass;
  }
}
