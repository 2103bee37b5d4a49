/**
 * The distance graph of a network with uncertainty in normal form: a contingent link [least, most] becomes a fixed wait of
 * `least` to a helper event, and from there a contingent link [0, most − least] with its lower-case and upper-case edge.
 * A contingent link without spread is an ordinary fixed link.
 *
 * @source [M14] section 2, normal form
 */
import type { Stnu } from './stnu.ts';

/** to ≤ from + weightS. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly weightS: number;
  readonly kind: 'ordinary' | 'lower' | 'upper';
  /** Contingent link of a lower or upper edge; −1 otherwise. */
  readonly label: number;
  readonly origin: EdgeOrigin;
}
export type EdgeOrigin =
  | { readonly of: 'requirement'; readonly link: number; readonly side: 'least' | 'most' }
  | { readonly of: 'contingent'; readonly link: number; readonly side: 'least' | 'most' }
  /** Follows from a path of edges. */
  | { readonly of: 'path'; readonly path: () => readonly Edge[] };

export class LabelledGraph {
  readonly size: number;
  /** Events of the network; those from here on are helpers. */
  readonly events: number;
  /** Edges that end at an event. */
  readonly into: Edge[][];
  /** Helper event of a contingent link; −1 where it has no spread. */
  readonly helperOf: readonly number[];
  /** Contingent link of a helper event, by event; −1 elsewhere. */
  readonly linkOfHelper: Int32Array;
  /** Contingent link with spread that ends at an event; −1 where the executor decides. */
  readonly linkOfEnd: Int32Array;
  readonly lanes: Int32Array;
  private readonly starts: readonly number[];
  private readonly ends: ReadonlySet<number>;
  private readonly ordinary = new Map<number, number>();

  constructor(stnu: Stnu) {
    const spreading = stnu.contingents.map(({ leastS, mostS }) => mostS > leastS);
    let next = stnu.events;
    this.events = stnu.events;
    this.starts = stnu.contingents.map(({ from }) => from);
    this.ends = new Set(stnu.contingents.map(({ to }) => to));
    this.helperOf = spreading.map((spreads) => (spreads ? next++ : -1));
    this.size = next;
    this.into = Array.from({ length: this.size }, () => []);
    this.linkOfHelper = new Int32Array(this.size).fill(-1);
    this.linkOfEnd = new Int32Array(this.size).fill(-1);
    this.lanes = new Int32Array(this.size);
    stnu.lanes?.forEach((mask, event) => {
      this.lanes[event] = mask;
    });
    stnu.requirements.forEach(({ from, to, leastS, mostS }, link) => {
      if (mostS !== null) this.addOrdinary(from, to, mostS, { of: 'requirement', link, side: 'most' });
      if (leastS !== null) this.addOrdinary(to, from, -leastS, { of: 'requirement', link, side: 'least' });
    });
    stnu.contingents.forEach(({ from, to, leastS, mostS }, link) => {
      const least = { of: 'contingent', link, side: 'least' } as const;
      const most = { of: 'contingent', link, side: 'most' } as const;
      const helper = this.helperOf[link] as number;
      if (helper < 0) {
        this.addOrdinary(from, to, mostS, most);
        this.addOrdinary(to, from, -leastS, least);
        return;
      }
      this.linkOfHelper[helper] = link;
      this.linkOfEnd[to] = link;
      this.lanes[helper] = this.lanes[from] as number;
      this.addOrdinary(from, helper, leastS, least);
      this.addOrdinary(helper, from, -leastS, least);
      this.addOrdinary(helper, to, mostS - leastS, most);
      this.addOrdinary(to, helper, 0, least);
      this.insert({ from: helper, to, weightS: 0, kind: 'lower', label: link, origin: least });
      this.insert({ from: to, to: helper, weightS: leastS - mostS, kind: 'upper', label: link, origin: most });
    });
  }

  /** Whether the executor picks its time: neither an end that nature picks nor the helper that follows one. */
  isDecided(event: number): boolean {
    const helped = this.linkOfHelper[event] as number;
    const start = helped < 0 ? event : (this.starts[helped] as number);
    return !this.ends.has(start);
  }

  /** False where an ordinary edge at least as tight is there already. */
  addOrdinary(from: number, to: number, weightS: number, origin: EdgeOrigin): boolean {
    const key = from * this.size + to;
    const known = this.ordinary.get(key);
    if (known !== undefined && known <= weightS) return false;
    this.ordinary.set(key, weightS);
    this.insert({ from, to, weightS, kind: 'ordinary', label: -1, origin });
    return true;
  }

  private insert(edge: Edge): void {
    (this.into[edge.to] as Edge[]).push(edge);
  }
}

/** The edges of the network itself that a path is made of, in order. */
export function originalEdges(path: readonly Edge[]): readonly Edge[] {
  return path.flatMap((edge) => (edge.origin.of === 'path' ? originalEdges(edge.origin.path()) : [edge]));
}
