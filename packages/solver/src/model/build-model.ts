import type {
  Constraint,
  Interval,
  IntervalId,
  LinearExpression,
  Literal,
  Model,
  Objective,
  Point,
  Variable,
  VariableId,
} from './model.ts';

/** Collects variables, intervals and constraints into a `Model`. Adds nothing of its own but what its methods say. */
export class ModelBuilder {
  private readonly variables: Variable[] = [];
  private readonly intervals: Interval[] = [];
  private readonly constraints: Constraint[] = [];
  private readonly objectives: Objective[] = [];
  private readonly name: string;
  readonly horizon: number;

  constructor(name: string, horizon: number) {
    this.name = name;
    this.horizon = horizon;
  }

  variable(name: string, min: number, max: number): VariableId {
    if (!Number.isInteger(min) || !Number.isInteger(max) || min > max) {
      throw new RangeError(`variable ${name}: bounds must be integers with min ≤ max, got ${min}..${max}`);
    }
    return this.variables.push({ name, min, max }) - 1;
  }

  boolean(name: string): Literal {
    return { variable: this.variable(name, 0, 1), holds: 1 };
  }

  /** An interval with its own start and end variables. `startMin`/`endMax` default to the horizon. */
  interval(
    name: string,
    duration: number | { readonly min: number; readonly max: number },
    options: { readonly startMin?: number; readonly endMax?: number; readonly presence?: Literal | null } = {},
  ): IntervalId {
    const startMin = options.startMin ?? 0;
    const endMax = options.endMax ?? this.horizon;
    const shortest = typeof duration === 'number' ? duration : duration.min;
    const start = this.variable(`${name}.start`, startMin, Math.max(startMin, endMax - shortest));
    const end = this.variable(
      `${name}.end`,
      Math.min(startMin + shortest, endMax),
      Math.max(startMin + shortest, endMax),
    );
    const length =
      typeof duration === 'number'
        ? duration
        : { variable: this.variable(`${name}.duration`, duration.min, duration.max) };
    return this.intervals.push({ name, start, end, duration: length, presence: options.presence ?? null }) - 1;
  }

  intervalAt(id: IntervalId): Interval {
    const interval = this.intervals[id];
    if (interval === undefined) throw new RangeError(`no interval ${id}`);
    return interval;
  }

  post(constraint: Constraint): void {
    this.constraints.push(constraint);
  }

  minimise(name: string, expression: LinearExpression): void {
    this.objectives.push({ name, minimise: expression });
  }

  build(): Model {
    return {
      name: this.name,
      horizon: this.horizon,
      variables: [...this.variables],
      intervals: [...this.intervals],
      constraints: [...this.constraints],
      objectives: [...this.objectives],
    };
  }
}

export function not(literal: Literal): Literal {
  return { variable: literal.variable, holds: literal.holds === 1 ? 0 : 1 };
}

export function startOf(interval: IntervalId, offset = 0): Point {
  return { interval, of: 'start', offset };
}

export function endOf(interval: IntervalId, offset = 0): Point {
  return { interval, of: 'end', offset };
}
