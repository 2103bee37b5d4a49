import type {
  Interval,
  IntervalId,
  LinearExpression,
  Literal,
  Model,
  Point,
  Solution,
} from '@handrail/solver/model/model';

/** A solution read through the model's words: which literals hold, which intervals are present and when they run. */
export class Assignment {
  readonly model: Model;
  private readonly values: Solution;

  constructor(model: Model, values: Solution) {
    this.model = model;
    this.values = values;
  }

  /** Value of a variable. NaN when the solution has none, so that every comparison with it fails. */
  valueOf(variable: number): number {
    return this.values[variable] ?? Number.NaN;
  }

  holds(literal: Literal): boolean {
    return this.valueOf(literal.variable) === literal.holds;
  }

  allHold(literals: readonly Literal[]): boolean {
    return literals.every((literal) => this.holds(literal));
  }

  interval(id: IntervalId): Interval {
    const interval = this.model.intervals[id];
    if (interval === undefined) throw new RangeError(`the model has no interval ${id}`);
    return interval;
  }

  isPresent(id: IntervalId): boolean {
    const { presence } = this.interval(id);
    return presence === null || this.holds(presence);
  }

  startOf(id: IntervalId): number {
    return this.valueOf(this.interval(id).start);
  }

  endOf(id: IntervalId): number {
    return this.valueOf(this.interval(id).end);
  }

  durationOf(id: IntervalId): number {
    const { duration } = this.interval(id);
    return typeof duration === 'number' ? duration : this.valueOf(duration.variable);
  }

  /** The instant a point stands for. It has a meaning only while its interval is present. */
  instantOf(point: Point): number {
    return (point.of === 'start' ? this.startOf(point.interval) : this.endOf(point.interval)) + point.offset;
  }

  sum(expression: LinearExpression): number {
    let total = expression.constant;
    for (const term of expression.terms) total += term.coefficient * this.valueOf(term.variable);
    return total;
  }

  /** How an interval is called in a message, with its times. */
  describe(id: IntervalId): string {
    return `${this.interval(id).name} [${this.startOf(id)}, ${this.endOf(id)})`;
  }
}
