import type { IntervalId, Literal, Point } from '@handrail/solver/model/model';
import type { Bounds } from './bounds.ts';
import type { Reading } from './reading.ts';
import type { Stretch } from './read-proof-line.ts';

export interface Range {
  readonly min: number;
  readonly max: number;
}
export interface Times {
  readonly start: Range;
  readonly end: Range;
  readonly duration: Range;
}
/** What an order variable among the atoms at hand says: `first` before `second`, or not. */
export interface OrderFact {
  readonly variable: number;
  readonly first: Stretch;
  readonly second: Stretch;
  readonly isBefore: boolean;
  /** No other constraint has used the variable, and none may if it is one of ties. */
  readonly isOwn: boolean;
  /** Which two holds of the constraint at hand it is about, where several have these stretches; null: not settled. */
  readonly pair: readonly [number, number] | null;
}
/** What a support variable among the atoms at hand says. */
export interface SupportFact {
  readonly need: number;
  readonly writer: number;
  readonly serves: boolean;
}

/** Bounds seen through the words of the model, for a look at one constraint. */
export class View {
  readonly bounds: Bounds;
  readonly reading: Reading;
  readonly orders: readonly OrderFact[];
  readonly supports: readonly SupportFact[];
  /** Auxiliary variables that equal the total of the sequence at hand. */
  readonly totals: readonly number[];

  /** The label of the inference, which may propose numbers for a bound. */
  readonly label: string;
  /** Variables that the atoms at hand are about; null: not told. */
  private readonly named: ReadonlySet<number> | null;

  constructor(
    bounds: Bounds,
    orders: readonly OrderFact[] = [],
    supports: readonly SupportFact[] = [],
    totals: readonly number[] = [],
    label = '',
    named: ReadonlySet<number> | null = null,
  ) {
    this.bounds = bounds;
    this.reading = bounds.reading;
    this.orders = orders;
    this.supports = supports;
    this.totals = totals;
    this.label = label;
    this.named = named;
  }

  isPresent(id: IntervalId): boolean {
    const { presence } = this.reading.interval(id);
    return presence === null || this.bounds.isTrue(presence);
  }
  isAbsent(id: IntervalId): boolean {
    const { presence } = this.reading.interval(id);
    return presence !== null && this.bounds.isFalse(presence);
  }
  allTrue(literals: readonly Literal[]): boolean {
    return literals.every((literal) => this.bounds.isTrue(literal));
  }

  /** Whether some atom at hand is about the interval itself or what it stands for: otherwise only the model's bounds are known. */
  isNamed(id: IntervalId): boolean {
    if (this.named === null) return true;
    const { start, end, duration, presence } = this.reading.interval(id);
    const variables = [start, this.reading.standIn(end).variable, presence?.variable ?? start];
    if (typeof duration !== 'number') variables.push(duration.variable);
    return (
      variables.some((v) => this.named?.has(v)) ||
      this.reading.mastersOf(id).some((up) => up !== id && this.isNamed(up))
    );
  }

  variable(id: number): Range {
    const { variable, offset } = this.reading.standIn(id);
    return { min: this.bounds.min(variable) + offset, max: this.bounds.max(variable) + offset };
  }

  /** Times of an interval if it is present: its own, what follows from its duration, and those of its masters. */
  times(id: IntervalId): Times {
    const interval = this.reading.interval(id);
    let start = this.variable(interval.start);
    let end = this.variable(interval.end);
    const length = interval.duration;
    let duration = typeof length === 'number' ? { min: length, max: length } : this.variable(length.variable);
    for (const master of this.reading.mastersOf(id)) {
      if (master === id) continue;
      const times = this.times(master);
      start = meet(start, times.start);
      end = meet(end, times.end);
      duration = meet(duration, times.duration);
    }
    duration = meet(duration, { min: Math.max(0, end.min - start.max), max: end.max - start.min });
    end = meet(end, { min: start.min + duration.min, max: start.max + duration.max });
    start = meet(start, { min: end.min - duration.max, max: end.max - duration.min });
    return { start, end, duration };
  }

  /** Range of an instant if its interval is present. */
  instant({ interval, of, offset }: Point): Range {
    const range = this.times(interval)[of];
    return { min: range.min + offset, max: range.max + offset };
  }

  /** Least time from one instant to another that the model's durations alone promise; -∞ where they promise nothing. */
  leastLength(from: Point, to: Point): number {
    if (from.interval !== to.interval) return Number.NEGATIVE_INFINITY;
    const shift = to.offset - from.offset;
    if (from.of === to.of) return shift;
    if (from.of === 'start') return shift + this.reading.shortest(from.interval);
    const { duration } = this.reading.interval(from.interval);
    const longest =
      typeof duration === 'number' ? duration : (this.reading.model.variables[duration.variable]?.max ?? 0);
    return shift - longest;
  }

  begin(stretch: Stretch): Range {
    const ranges = stretch.from.map((point) => this.instant(point));
    return { min: Math.min(...ranges.map(({ min }) => min)), max: Math.min(...ranges.map(({ max }) => max)) };
  }
  finish(stretch: Stretch): Range {
    return this.instant(stretch.to);
  }
  mayBeEmpty(stretch: Stretch): boolean {
    return stretch.from.every((point) => this.leastLength(point, stretch.to) <= 0);
  }

  /** Whether both are the same stretch of time, masters having taken the place of their options. */
  isSameStretch(a: Stretch, b: Stretch): boolean {
    const [x, y] = [this.atMasters(a), this.atMasters(b)];
    if (!isSamePoint(x.to, y.to)) return false;
    const covers = (one: Stretch, other: Stretch) =>
      one.from.every((p) => other.from.some((q) => isSamePoint(p, q) || this.leastLength(q, p) >= 0));
    return covers(x, y) && covers(y, x);
  }

  /** A stretch of options as that of their masters, which it is when they are present. */
  atMasters({ from, to }: Stretch): Stretch {
    return { from: from.map((point) => this.pointAtMaster(point)), to: this.pointAtMaster(to) };
  }

  private pointAtMaster(point: Point): Point {
    const master = this.reading.mastersOf(point.interval).at(-1);
    return master === undefined || master === point.interval
      ? point
      : this.pointAtMaster({ ...point, interval: master });
  }
}

function isSamePoint(a: Point, b: Point): boolean {
  return a.interval === b.interval && a.of === b.of && a.offset === b.offset;
}

function meet(a: Range, b: Range): Range {
  return { min: Math.max(a.min, b.min), max: Math.min(a.max, b.max) };
}
