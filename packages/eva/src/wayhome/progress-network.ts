/**
 * How the progress of the two people hangs together in the network that they really follow (proof/network): which segments can
 * stand side by side, over which PET, and how long after an instant that may be.
 *
 * What keeps two segments apart is only what holds in every execution: orders and lags, and lengths within their bounds. A longest
 * time that somebody wishes for (a clock, the wall, the end of a window) keeps nothing apart: whether it is kept is what is asked.
 * Two segments can stand side by side when neither has to be over before the other begins. Both conditions can then be met at
 * once: a contradiction would need each in turn, start of one, its end, start of the other, its end, and its length is the sum
 * of the two longest lengths, which is below 0 never, and 0 only where neither takes any time.
 *
 * How late something can be takes the crew to go on as soon as it may, or at the planned time where that is later; of waits only
 * those count that the network holds them to. How long a clock has run is bounded by its limit as well where the network is
 * controllable: then there are holds under which every execution keeps it, and it is those that the crew follows.
 */
import { checkControllability } from '../proof/control/check-controllability.ts';
import { networkStnu } from '../proof/control/network-stnu.ts';
import { arcsOf, SimpleNetwork } from '../proof/network/simple-network.ts';
import type { LinkKind, TemporalNetwork } from '../proof/network/temporal-network.ts';
import type { Segment } from './segments.ts';

export interface ProgressPair {
  /** The same segment twice where one person is outside alone. */
  readonly a: Segment;
  readonly b: Segment;
  /** PET range in which both can be so at once. */
  readonly fromS: number;
  readonly toS: number;
}

/** Longest times that are facts of the network, not wishes. */
const EXACT: ReadonlySet<LinkKind> = new Set(['same-time', 'hatch']);

interface InEdge {
  readonly from: number;
  readonly mostS: number;
}

export class ProgressNetwork {
  private readonly segments: readonly (readonly Segment[])[];
  private readonly ends: ReadonlyMap<Segment, readonly [start: number, end: number]>;
  private readonly network: TemporalNetwork | null;
  private readonly distances: SimpleNetwork;
  private readonly into: readonly (readonly InEdge[])[];
  /** Events in an order in which every one comes after what it waits for. */
  private readonly inTurn: readonly number[];
  private readonly plannedS: readonly number[];
  private readonly rows = new Map<number, Float64Array>();
  private readonly petZero: number;
  /** With every limit a fact; null: not every execution keeps them. Decided when first asked for. */
  private allKept: SimpleNetwork | null | undefined;
  private readonly drawn: Drawn;

  /**
   * @param network null: none can be drawn (no closing of the hatch is planned); then every pair can stand side by side at any time
   * @param segments of one person or two
   */
  constructor(network: TemporalNetwork | null, segments: readonly (readonly Segment[])[]) {
    this.segments = segments;
    const drawn = network === null ? NOTHING : withEverySegment(network, segments);
    const { requirements, contingents, plannedS } = drawn;
    this.drawn = drawn;
    this.ends = drawn.ends;
    this.plannedS = plannedS;
    this.petZero = network?.petZero ?? 0;
    this.distances = new SimpleNetwork(
      plannedS.length,
      arcsOf(drawn, (kind) => EXACT.has(kind)),
    );
    // Orders that run in a circle keep nothing apart.
    this.network = this.distances.consistent ? network : null;
    const into: InEdge[][] = plannedS.map(() => []);
    for (const { from, to, leastS } of requirements) {
      if (leastS !== null) into[to]?.push({ from, mostS: leastS });
    }
    for (const { from, to, mostS } of contingents) into[to]?.push({ from, mostS });
    this.into = into;
    this.inTurn = sorted(into);
  }

  pairs(): readonly ProgressPair[] {
    const [a = [], b] = this.segments;
    if (b === undefined) return a.flatMap((one) => this.pairOf(one, one));
    return a.flatMap((one) => b.flatMap((two) => this.pairOf(one, two)));
  }

  /**
   * The longest from one event to another, or until either of these segments is over; Infinity: no bound is known.
   * @param from null: an instant that is not in the network
   */
  mostBetweenS(from: number | null, to: number | null): number {
    if (this.network === null || from === null || to === null) return Number.POSITIVE_INFINITY;
    const mostS = this.rowFrom(from)[to] ?? Number.POSITIVE_INFINITY;
    return Math.min(mostS, this.everyLimit()?.most(from, to) ?? Number.POSITIVE_INFINITY);
  }
  /** From the start of one segment until another of the same person is over. */
  mostFromS(first: Segment, last: Segment): number {
    return this.mostBetweenS(this.startOf(first), this.endOf(last));
  }
  mostSinceS(event: number | null, now: readonly Segment[]): number {
    return Math.min(...now.map((segment) => this.mostBetweenS(event, this.endOf(segment))));
  }

  /** The event of a write: of a boundary of a stint, or of an outside event; null: it is not in the network. */
  eventOf(by: string, boundary: number): number | null {
    const stint = this.network?.boundaries.get(by);
    return (stint === undefined ? this.network?.outside.get(by) : stint.get(boundary)) ?? null;
  }

  /** Whether an event has happened while both are in these segments; null: in some execution it has, in some not. */
  hasHappened(event: number | null, now: readonly Segment[]): boolean | null {
    if (this.network === null || event === null) return null;
    const { distances } = this;
    if (now.some((segment) => distances.least(event, this.startOf(segment)) >= 0)) return true;
    return now.some((segment) => distances.least(this.endOf(segment), event) >= 0) ? false : null;
  }

  /** Requests that are in force from before these segments begin until after they are over, whatever the execution. */
  requestsInForce(now: readonly Segment[]): ReadonlySet<string> {
    const found = (this.network?.requestEvents ?? []).filter(
      ({ verified, clearCall }) =>
        this.hasHappened(verified, now) === true && this.hasHappened(clearCall, now) === false,
    );
    return new Set(found.map(({ request }) => request));
  }

  /** Earliest PET at which all of these can be so at once; −Infinity: not known. */
  earliestS(now: readonly Segment[]): number {
    if (this.network === null) return Number.NEGATIVE_INFINITY;
    return Math.max(...now.map((segment) => this.distances.least(this.petZero, this.startOf(segment))));
  }

  private everyLimit(): SimpleNetwork | null {
    if (this.allKept === undefined) {
      const isKept = this.network !== null && checkControllability(networkStnu(this.network)).controllable;
      this.allKept = isKept ? new SimpleNetwork(this.plannedS.length, arcsOf(this.drawn)) : null;
    }
    return this.allKept;
  }

  private pairOf(a: Segment, b: Segment): readonly ProgressPair[] {
    if (this.network === null) return [{ a, b, fromS: 0, toS: Number.POSITIVE_INFINITY }];
    const [startA, endA] = [this.startOf(a), this.endOf(a)];
    const [startB, endB] = [this.startOf(b), this.endOf(b)];
    const fromS = this.earliestS([a, b]);
    const latest = this.rowFrom(this.petZero);
    const toS = Math.min(latest[endA] ?? Number.POSITIVE_INFINITY, latest[endB] ?? Number.POSITIVE_INFINITY);
    if (fromS >= toS) return [];
    const isApart = this.distances.least(endA, startB) >= 0 || this.distances.least(endB, startA) >= 0;
    return isApart && a !== b ? [] : [{ a, b, fromS, toS }];
  }

  private startOf(segment: Segment): number {
    return this.ends.get(segment)?.[0] ?? -1;
  }
  private endOf(segment: Segment): number {
    return this.ends.get(segment)?.[1] ?? -1;
  }

  /** For every event: the longest from `event` to it. Events before it are a negative time away. */
  private rowFrom(event: number): Float64Array {
    const known = this.rows.get(event);
    if (known !== undefined) return known;
    const { plannedS } = this;
    const row = new Float64Array(plannedS.length).fill(Number.POSITIVE_INFINITY);
    for (const to of this.inTurn) {
      // Nobody who keeps to the planned times starts this one later than it is planned after the other.
      let mostS = (plannedS[to] as number) - (plannedS[event] as number);
      for (const edge of this.into[to] as readonly InEdge[]) {
        mostS = Math.max(mostS, (row[edge.from] as number) + edge.mostS);
      }
      const isSource = (this.into[to] as readonly InEdge[]).length === 0;
      const boundS = this.distances.most(event, to);
      row[to] = to === event ? 0 : isSource ? boundS : Math.min(mostS, boundS);
    }
    this.rows.set(event, row);
    return row;
  }
}

interface Drawn extends Pick<TemporalNetwork, 'requirements' | 'contingents'> {
  readonly plannedS: readonly number[];
  readonly ends: ReadonlyMap<Segment, readonly [start: number, end: number]>;
}

const NOTHING: Drawn = { requirements: [], contingents: [], plannedS: [], ends: new Map() };

/** The network with the ends of every step and rail in it: those that nothing hangs on take their share of the length around them. */
function withEverySegment(network: TemporalNetwork, segments: readonly (readonly Segment[])[]): Drawn {
  const plannedS = network.events.map((event) => event.plannedS);
  const contingents = [...network.contingents];
  const ends = new Map<Segment, readonly [start: number, end: number]>();
  const between = new Map<string, number>();
  const add = (atS: number): number => plannedS.push(atS) - 1;

  /** The instants within a length, as events; people who share a stint share them. */
  const cut = (from: number, to: number, parts: readonly Segment[], name: (part: Segment) => string): number[] => {
    const lengthS = parts.reduce((sum, part) => sum + part.endS - part.startS, 0);
    // The crew may wait before the first step: then the length begins after the wait.
    const whole = network.contingents.find((link) => link.to === to);
    const marks = [from];
    let last = whole?.from ?? from;
    parts.forEach((part, at) => {
      const isLast = at === parts.length - 1;
      const key = name(part);
      const known = isLast ? to : between.get(key);
      const mark = known ?? add(part.endS);
      const share = lengthS > 0 ? (part.endS - part.startS) / lengthS : 1 / parts.length;
      if (whole !== undefined && parts.length > 1 && (known === undefined || isLast)) {
        const [leastS, mostS] = [whole.leastS * share, whole.mostS * share];
        contingents.push({ ...whole, from: last, to: mark, leastS, mostS });
      }
      last = mark;
      if (!isLast) between.set(key, mark);
      marks.push(mark);
    });
    return marks;
  };

  for (const list of segments) {
    const person = list[0]?.person ?? '';
    const ways = network.ways.filter(({ who }) => who === person);
    const passages = network.passages.filter((passage) => passage.person === person);
    let [way, passage] = [0, 0];
    for (const { kind, parts } of togetherIn(network, list)) {
      const [first] = parts as [Segment, ...Segment[]];
      if (kind === 'wait') continue;
      const found =
        kind === 'move'
          ? ways[way++]
          : kind === 'passage'
            ? passages[passage++]
            : boundsOfWork(network, first, parts.at(-1) as Segment);
      if (found === undefined) throw new Error(`${person}: ${kind} at ${first.startS} s is not in the network`);
      const marks = cut(found.start, found.end, parts, (part) =>
        kind === 'work' ? part.till : `${person}:${part.till}`,
      );
      parts.forEach((part, at) => ends.set(part, [marks[at] as number, marks[at + 1] as number]));
    }
    // Who waits does so from the end of one thing to the start of the next.
    list.forEach((segment, at) => {
      if (ends.has(segment)) return;
      const before = list.slice(0, at).findLast((one) => ends.has(one));
      const after = list.slice(at + 1).find((one) => ends.has(one));
      const start = before === undefined ? network.petZero : (ends.get(before)?.[1] as number);
      ends.set(segment, [start, after === undefined ? network.bothIn : (ends.get(after)?.[0] as number)]);
    });
  }
  return { requirements: network.requirements, contingents, plannedS, ends };
}

interface Together {
  readonly kind: 'wait' | 'passage' | 'move' | 'work';
  readonly parts: readonly Segment[];
}

/** Rails of one way, and steps of one stint between two events of the network, in one. */
function togetherIn(network: TemporalNetwork, list: readonly Segment[]): readonly Together[] {
  const found: { kind: Together['kind']; parts: Segment[] }[] = [];
  for (const segment of list) {
    const last = found.at(-1);
    const before = last?.parts.at(-1);
    const { kind } = segment;
    const goesOn =
      before !== undefined &&
      ((kind === 'move' && before.kind === 'move' && before.till === segment.from) ||
        (kind === 'work' &&
          before.kind === 'work' &&
          before.stint === segment.stint &&
          network.boundaries.get(segment.stint ?? '')?.has(segment.step ?? 0) !== true));
    if (goesOn) last?.parts.push(segment);
    else {
      const shown = kind === 'move' || kind === 'work' ? kind : kind === 'in' || kind === 'out' ? 'passage' : 'wait';
      found.push({ kind: shown, parts: [segment] });
    }
  }
  return found;
}

/** A pause before a step belongs to the step: it is not begun. Whoever joins at it is not there before it starts. */
function boundsOfWork(
  network: TemporalNetwork,
  first: Segment,
  last: Segment,
): { readonly start: number; readonly end: number } | undefined {
  const events = network.boundaries.get(first.stint ?? '');
  const end = events?.get((last.step ?? 0) + 1);
  const start = events?.get(first.step ?? 0);
  return start === undefined || end === undefined ? undefined : { start, end };
}

/** Kahn's order; what lies on a circle is left out, and nothing is known of it. */
function sorted(into: readonly (readonly InEdge[])[]): readonly number[] {
  const out: number[][] = into.map(() => []);
  const waits = into.map((edges) => edges.length);
  into.forEach((edges, to) => {
    for (const { from } of edges) out[from]?.push(to);
  });
  const ready = waits.flatMap((count, event) => (count === 0 ? [event] : []));
  for (let head = 0; head < ready.length; head++) {
    for (const to of out[ready[head] as number] as number[]) {
      waits[to] = (waits[to] as number) - 1;
      if (waits[to] === 0) ready.push(to);
    }
  }
  return ready;
}
