/**
 * How the progress of the two people hangs together in the network that they really follow (proof/network): which segments can
 * stand side by side, over which PET, and how long after an instant that may be.
 *
 * What keeps two segments apart is only what holds in every execution: orders and lags, and lengths within their bounds; where none are
 * stated a length is its planning figure, as in the whole proof. A longest time that somebody wishes for (a clock, the wall, a gate, the
 * end of a window, the longest hold of a request) and the least of a clock keep nothing apart: whether they are kept is what is asked.
 * The two longest times that are facts count: outside events stand in UTC, and PET 0 is the first egress.
 *
 * Two segments stand side by side for a time when each of their two starts comes before each of their two ends. A system of
 * differences has no solution exactly if some circle of its arcs with a strict one in it has length ≤ 0. A strict arc leads here from
 * an end to a start; what leads on from there to the next strict arc leads from a start to an end, and is as long as the greatest
 * time from the one to the other. So where each of those four is above 0, every circle is, however many strict arcs are in it:
 * each of the four by itself decides. The two within one segment say that it can take any time at all: an empty one is nowhere.
 *
 * How late something can be takes the crew to go on as soon as it may, or at the planned time where that is later: nobody dawdles. An
 * instant t is then no later than the later of its planned PET and of all that it waits for, at its longest; so t − e is at most the
 * greatest of (planned t − earliest e) and of those sums, counted on from e. A call is taken as heard at once where it keeps things
 * apart or makes something early, and as late as it can be where it makes somebody late. Bounds of several links together are not
 * followed to the end: a pair may be left in that cannot come true, none is left out.
 *
 * Waits that are not planned have no segment: who waits has done the one before and not begun the one after, and the range of both
 * reaches over the wait. What overlaps as planned is always among the pairs, also where the plan breaks an order of its own.
 *
 * Where the network is controllable there are holds under which every execution keeps every limit, and it is those that the crew
 * follows: they hold somebody back for up to the longest wait that they name, and a clock never runs beyond its limit.
 *
 * @checked tests/properties/wayhome/pairs-by-enumeration.test.ts, tests/properties/wayhome/what-has-gone-by.test.ts
 */
import { checkControllability } from '../proof/control/check-controllability.ts';
import { networkStnu } from '../proof/control/network-stnu.ts';
import { spokenHolds } from '../proof/control/spoken-holds.ts';
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

const ROUNDING_S = 1e-6;

/** Longest times that are facts of the network, not wishes. */
const EXACT: ReadonlySet<LinkKind> = new Set(['same-time', 'hatch']);

interface InEdge {
  readonly from: number;
  readonly mostS: number;
}

export class ProgressNetwork {
  private readonly segments: readonly (readonly Segment[])[];
  private readonly ends: ReadonlyMap<Segment, Ends>;
  private readonly network: TemporalNetwork | null;
  private readonly distances: SimpleNetwork;
  /** The same arcs the other way: the earliest of every event from one row. */
  private readonly backward: SimpleNetwork;
  private readonly into: readonly (readonly InEdge[])[];
  /** Events in an order in which every one comes after what it waits for. */
  private readonly inTurn: readonly number[];
  private readonly plannedS: readonly number[];
  private readonly rows = new Map<number, Float64Array>();
  private readonly petZero: number;
  /** With every limit a fact; null: not every execution keeps them. */
  private readonly everyLimit: SimpleNetwork | null;
  private known: readonly ProgressPair[] | undefined;
  /** By the numbers of their segments. */
  private among: ReadonlySet<number> | undefined;
  private readonly width: number;

  /**
   * @param network null: none can be drawn (no closing of the hatch is planned). Then, as where the timeline does not fit the text or
   *   its orders run in a circle, every pair can stand side by side at any time
   * @param segments of one person or two
   */
  constructor(network: TemporalNetwork | null, segments: readonly (readonly Segment[])[]) {
    this.segments = segments;
    this.width = segments[1]?.length ?? 0;
    const fits = network === null ? null : withEverySegment(network, segments);
    const drawn = fits ?? NOTHING;
    const { requirements, contingents, plannedS } = drawn;
    this.ends = drawn.ends;
    this.plannedS = plannedS;
    this.petZero = network?.petZero ?? 0;
    const arcs = arcsOf(atOnce(drawn), (kind) => EXACT.has(kind));
    this.distances = new SimpleNetwork(plannedS.length, arcs);
    this.backward = new SimpleNetwork(
      plannedS.length,
      arcs.map(({ from, to, weightS }) => ({ from: to, to: from, weightS })),
    );
    // Orders that run in a circle keep nothing apart.
    this.network = fits !== null && this.distances.consistent ? network : null;
    const into: InEdge[][] = plannedS.map(() => []);
    for (const { from, to, leastS } of requirements) {
      if (leastS !== null) into[to]?.push({ from, mostS: leastS });
    }
    for (const { from, to, mostS } of contingents) into[to]?.push({ from, mostS });
    const decided = this.network === null ? null : checkControllability(networkStnu(this.network));
    if (decided?.controllable === true) {
      // In UTC and by whom does not matter here: only who waits for how long.
      for (const { event, wait } of spokenHolds(network as TemporalNetwork, decided.strategy, 0, 0)) {
        into[event]?.push({ from: wait.after, mostS: wait.waitS });
      }
      this.everyLimit = new SimpleNetwork(plannedS.length, arcsOf(atOnce(drawn)));
    } else this.everyLimit = null;
    this.into = into;
    this.inTurn = sorted(into);
  }

  pairs(): readonly ProgressPair[] {
    const [a = [], b] = this.segments;
    this.known ??=
      b === undefined
        ? a.flatMap((one) => this.pairOf(one, one))
        : a.flatMap((one) => b.flatMap((two) => this.pairOf(one, two)));
    return this.known;
  }

  /**
   * The longest from one event to another; Infinity: no bound is known.
   * @param from null: an instant that is not in the network
   */
  mostBetweenS(from: number | null, to: number | null): number {
    if (this.network === null || from === null || to === null) return Number.POSITIVE_INFINITY;
    return this.withLimits(this.rowFrom(from), from, to);
  }
  /**
   * From the start of one segment until another of the same person is over, where the first is begun at its planned time or later: who
   * begins early has no less time, only longer to wait for the planned times after it.
   */
  mostFromS(first: Segment, last: Segment): number {
    const [from, to] = [this.startOf(first), this.endOf(last)];
    if (this.network === null || from < 0 || to < 0) return Number.POSITIVE_INFINITY;
    return this.withLimits(this.rowCounted(from, this.plannedS[from] as number), from, to);
  }
  private withLimits(row: Float64Array, from: number, to: number): number {
    return Math.min(row[to] ?? Number.POSITIVE_INFINITY, this.everyLimit?.most(from, to) ?? Number.POSITIVE_INFINITY);
  }
  /** From an event until either of these segments is over, and the wait after it that belongs to it. */
  mostSinceS(event: number | null, now: readonly Segment[]): number {
    return Math.min(...now.map((segment, at) => this.mostBetweenS(event, this.lastOf(segment, now[1 - at]))));
  }
  /** A wait after a segment counts as the next one, not begun, where that can stand beside the other's; else it counts here. */
  private lastOf(segment: Segment, other: Segment | undefined): number {
    const lane = this.segments.findIndex((list) => list[segment.index] === segment);
    const next = this.segments[lane]?.[segment.index + 1];
    const { end, heldTo } = this.ends.get(segment) ?? NOWHERE;
    if (other === undefined || next === undefined || end === heldTo) return end;
    return this.isPair(lane === 0 ? next.index : other.index, lane === 0 ? other.index : next.index) ? end : heldTo;
  }
  private isPair(a: number, b: number): boolean {
    this.among ??= new Set(this.pairs().map((pair) => pair.a.index * this.width + pair.b.index));
    return this.among.has(a * this.width + b);
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
    // Waits that have no segment of their own belong to those around them.
    const held = now.map((segment) => this.ends.get(segment) ?? NOWHERE);
    if (held.some(({ heldFrom }) => distances.least(event, heldFrom) >= 0)) return true;
    return held.some(({ heldTo }) => distances.least(heldTo, event) >= 0) ? false : null;
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
    return Math.max(...now.map((segment) => this.earliestOf(this.startOf(segment))));
  }
  private earliestOf(event: number): number {
    return -this.backward.most(this.petZero, event);
  }

  private pairOf(a: Segment, b: Segment): readonly ProgressPair[] {
    if (this.network === null) return [{ a, b, fromS: 0, toS: Number.POSITIVE_INFINITY }];
    const [startA, endA] = [this.startOf(a), this.endOf(a)];
    const [startB, endB] = [this.startOf(b), this.endOf(b)];
    const latest = this.rowFrom(this.petZero);
    const held = [a, b].map((segment) => this.ends.get(segment) as Ends);
    const fromS = Math.max(...held.map(({ heldFrom }) => this.earliestOf(heldFrom)));
    const toS = Math.min(...held.map(({ heldTo }) => latest[heldTo] as number));
    // A plan that breaks an order of its own may be flown as it stands.
    const planned = { fromS: Math.max(a.startS, b.startS), toS: Math.min(a.endS, b.endS) };
    const isPlanned = planned.fromS < planned.toS;
    const isApart = [startA, startB].some((start) => {
      const row = this.rowFrom(start);
      return Math.min(row[endA] as number, row[endB] as number) <= ROUNDING_S;
    });
    if (fromS >= toS - ROUNDING_S || isApart) return isPlanned ? [{ a, b, ...planned }] : [];
    if (!isPlanned) return [{ a, b, fromS, toS }];
    return [{ a, b, fromS: Math.min(fromS, planned.fromS), toS: Math.max(toS, planned.toS) }];
  }

  private startOf(segment: Segment): number {
    return (this.ends.get(segment) ?? NOWHERE).start;
  }
  private endOf(segment: Segment): number {
    return (this.ends.get(segment) ?? NOWHERE).end;
  }

  /**
   * For every event: the longest from `event` to it. Events before it are a negative time away. Nobody dawdles: what is begun is begun
   * by its planned time, or as soon as all is there that it waits for.
   */
  private rowFrom(event: number): Float64Array {
    const known = this.rows.get(event);
    if (known !== undefined) return known;
    // Counted from the earliest that it can be: what has ended early lies further from a planned start than the plan says.
    const row = this.rowCounted(event, this.earliestOf(event));
    this.rows.set(event, row);
    return row;
  }
  /** @param fromS PET before which `event` does not happen */
  private rowCounted(event: number, fromS: number): Float64Array {
    const { plannedS } = this;
    const row = new Float64Array(plannedS.length).fill(Number.POSITIVE_INFINITY);
    for (const to of this.inTurn) {
      let mostS = (plannedS[to] as number) - fromS;
      for (const edge of this.into[to] as readonly InEdge[]) {
        mostS = Math.max(mostS, (row[edge.from] as number) + edge.mostS);
      }
      const isSource = (this.into[to] as readonly InEdge[]).length === 0;
      const boundS = this.distances.most(event, to);
      row[to] = to === event ? 0 : isSource ? boundS : Math.min(mostS, boundS);
    }
    return row;
  }
}

/** What every execution keeps: calls that are heard at once, and not that a clock has run for the least that it is to. */
function atOnce(drawn: Drawn): Drawn {
  const requirements = drawn.requirements.map((link) => ({
    ...link,
    leastS: link.kind === 'clock' ? null : (link.atOnceS ?? link.leastS),
  }));
  return { ...drawn, requirements };
}

interface Ends {
  readonly start: number;
  readonly end: number;
  /** End of what is done before it, start of what is done after it; beside a planned wait the same as its own. */
  readonly heldFrom: number;
  readonly heldTo: number;
}
const NOWHERE: Ends = { start: -1, end: -1, heldFrom: -1, heldTo: -1 };
interface Drawn extends Pick<TemporalNetwork, 'requirements' | 'contingents'> {
  readonly plannedS: readonly number[];
  readonly ends: ReadonlyMap<Segment, Ends>;
}

const NOTHING: Drawn = { requirements: [], contingents: [], plannedS: [], ends: new Map() };

/**
 * The network with the ends of every step and rail in it: those that nothing hangs on take their share of the length around them.
 * null: a stint stands in the timeline that the network does not have, or with other steps.
 */
function withEverySegment(network: TemporalNetwork, segments: readonly (readonly Segment[])[]): Drawn | null {
  const plannedS = network.events.map((event) => event.plannedS);
  const contingents = [...network.contingents];
  const ends = new Map<Segment, Ends>();
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
    const drawn = new Map<Segment, readonly [start: number, end: number]>();
    for (const { kind, parts } of togetherIn(network, list)) {
      const [first] = parts as [Segment, ...Segment[]];
      if (kind === 'wait') continue;
      const found =
        kind === 'move'
          ? ways[way++]
          : kind === 'passage'
            ? passages[passage++]
            : boundsOfWork(network, first, parts.at(-1) as Segment);
      if (found === undefined) return null;
      const marks = cut(found.start, found.end, parts, (part) =>
        kind === 'work' ? part.till : `${person}:${part.till}`,
      );
      parts.forEach((part, at) => drawn.set(part, [marks[at] as number, marks[at + 1] as number]));
    }
    // Who waits does so from the end of one thing to the start of the next.
    list.forEach((segment, at) => {
      const before = list.slice(0, at).findLast((one) => drawn.has(one));
      const after = list.slice(at + 1).find((one) => drawn.has(one));
      const heldFrom = before === undefined ? network.petZero : (drawn.get(before)?.[1] as number);
      const heldTo = after === undefined ? network.bothIn : (drawn.get(after)?.[0] as number);
      const [start, end] = drawn.get(segment) ?? [heldFrom, heldTo];
      ends.set(segment, {
        start,
        end,
        heldFrom: before !== undefined && before === list[at - 1] ? heldFrom : start,
        heldTo: after !== undefined && after === list[at + 1] ? heldTo : end,
      });
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
