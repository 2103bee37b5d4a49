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

/** Bounds seen through the words of the model, for one look at one constraint: they stay as they are meanwhile. */
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
  private readonly timesKnown = new Map<IntervalId, Times>();

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
    const known = this.timesKnown.get(id);
    if (known !== undefined) return known;
    const times = this.workOutTimes(id);
    this.timesKnown.set(id, times);
    return times;
  }

  private workOutTimes(id: IntervalId): Times {
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

  begin(stretch: Stretch): Range {
    const ranges = stretch.from.map((point) => this.instant(point));
    return { min: Math.min(...ranges.map(({ min }) => min)), max: Math.min(...ranges.map(({ max }) => max)) };
  }
  finish(stretch: Stretch): Range {
    return this.instant(stretch.to);
  }
}

function meet(a: Range, b: Range): Range {
  return { min: Math.max(a.min, b.min), max: Math.min(a.max, b.max) };
}
