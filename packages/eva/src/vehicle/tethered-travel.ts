/**
 * One person's travel: the regions of the anchors, and swaps between them. Shortest over place × anchor for one load class;
 * both ends stand on the anchor that is worked from there.
 */
import { Fault } from '@handrail/quantity/fault';
import type { Campaign, DefaultUsed, LoadClass, Person } from '../campaign/campaign.ts';
import { modelledTether } from './modelled-tether.ts';
import type { Arc, RailNetwork } from './rail-network.ts';
import { type ShortestTimes, shortestTimes } from './shortest-times.ts';
import type { TetherPath } from './tether-path.ts';
import { type RegionNode, type TetherRegion, tetherRegion, untetheredRegion } from './tether-region.ts';

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

interface AnchorPoint {
  readonly id: string | null;
  readonly place: number;
  readonly region: TetherRegion;
  /** Arc times in the region and rows from the standing positions, by load class ('' for none). */
  readonly byLoad: Map<string, { readonly timeS: Float64Array; readonly rows: (ShortestTimes | undefined)[] }>;
}

export class TetheredTravel {
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

  railSeconds(from: string, to: string, loadClass: string | null): number {
    const goal = this.placeIndex(to);
    const factor = this.loads.get(this.loadKey(loadClass))?.factor ?? 1;
    const rails = (this.network.arcs[this.placeIndex(from)] ?? []).filter(
      (arc) => arc.to === goal && (loadClass === null || !arc.rail.refuses.includes(loadClass)),
    );
    return Math.min(...rails.map((arc) => arc.durationS * factor));
  }

  tetherAt(place: string): TetherPath | null {
    const at = this.placeIndex(place);
    const anchor = this.anchors[this.anchorOf[at] as number];
    if (anchor === undefined || anchor.id === null) return null;
    const { region } = anchor;
    const end = region.standing[at] as number;
    if (end === -1) return null;
    const row = this.row(this.anchorOf[at] as number, region.standing[anchor.place] as number, '');
    const arcs: Arc[] = [];
    for (let node = end; (row.byArc[node] as number) !== -1; node = row.before[node] as number) {
      arcs.unshift(region.arcs[row.byArc[node] as number] as Arc);
    }
    const { threaded, reelM } = region.nodes[end] as RegionNode;
    const name = (index: number): string => this.network.places[index] as string;
    return {
      anchor: anchor.id,
      points: [name(anchor.place), ...threaded.map((arc) => arc.rail.fairlead ?? name(arc.from)), place],
      along: [name(anchor.place), ...arcs.map((arc) => name(arc.to))],
      rails: arcs.map((arc) => arc.rail),
      reelM,
    };
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
