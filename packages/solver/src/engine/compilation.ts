import type { Interval, IntervalId, Literal, Model, Point, VariableId } from '../model/model.ts';
import { isOptional, variableRoles } from '../model/variable-roles.ts';
import { type Following, followingOf } from './following.ts';
import { Kernel, type Term } from './kernel.ts';
import { NO_OWNER } from './store.ts';

/** An interval as the engine holds it. `presence` is a literal, or -1 when it is always there. */
export interface EngineInterval {
  readonly start: Term;
  readonly end: Term;
  readonly duration: Term | null;
  readonly minDuration: number;
  readonly presence: number;
}

/** A stretch between instants that may have to be ordered against another one. */
export interface Block {
  /** It begins when the earliest of these does. */
  readonly from: readonly Point[];
  readonly to: Point;
  readonly isPossiblyEmpty: boolean;
}

/** What an auxiliary variable means, for the proof. */
export interface OrderDefinition {
  readonly variable: number;
  readonly first: Block;
  readonly second: Block;
}

/** A model on its way into a kernel: where each variable and interval went, and the auxiliary variables made for it. */
export class Compilation {
  readonly model: Model;
  readonly kernel = new Kernel();
  /** Per model variable: the engine variable and offset that stand for it. */
  readonly terms: Term[] = [];
  readonly intervals: EngineInterval[] = [];
  readonly orders: OrderDefinition[] = [];
  /** Whether a proof is written: some reasons then carry arguments for it. */
  isLogged = false;
  /** Whether resources look at what has to be done within stretches of time, besides single instants. */
  looksAtEnergy = true;
  /** Every clash between intervals has an order literal, so that times follow from literals. */
  isPairwise = true;
  private readonly orderByKey = new Map<string, number>();
  private readonly follows: Following | null;
  /** Per interval: the master that it stands for when present. */
  private readonly roots: number[];

  constructor(model: Model) {
    this.model = model;
    this.roots = model.intervals.map((_, id) => id);
    for (const c of model.constraints) {
      if (c.kind === 'alternative')
        for (const option of c.options) if (option !== c.master) this.roots[option] = c.master;
    }
    this.placeVariables();
    this.noteImplications();
    this.follows = followingOf(model);
  }

  /** The literal as a side of the store. */
  literal(literal: Literal): number {
    return literal.holds === 1 ? 2 * literal.variable : 2 * literal.variable + 1;
  }
  term(variable: VariableId): Term {
    return this.terms[variable] as Term;
  }
  interval(id: IntervalId): EngineInterval {
    return this.intervals[id] as EngineInterval;
  }
  point(point: Point): Term {
    const interval = this.interval(point.interval);
    const { variable, offset } = point.of === 'start' ? interval.start : interval.end;
    return { variable, offset: offset + point.offset };
  }
  /** Presence literals of the intervals, those that are open. */
  presences(ids: readonly IntervalId[]): number[] {
    return [...new Set(ids)].map((id) => this.interval(id).presence).filter((literal) => literal >= 0);
  }

  private placeVariables(): void {
    const { model, kernel } = this;
    const roles = variableRoles(model);
    model.variables.forEach(({ min, max }, id) => {
      const owner = roles.owner[id] ?? null;
      kernel.newVariable(min, max, owner === null ? NO_OWNER : this.literal(owner));
      this.terms.push(roles.standsFor[id] as Term);
    });
    roles.standsFor.forEach(({ variable, offset }, id) => {
      if (variable === id) return;
      // The bounds of the variable that is no longer there.
      const { min, max } = model.variables[id] as Model['variables'][number];
      this.require(2 * variable, min - offset);
      this.require(2 * variable + 1, -(max - offset));
    });
    model.intervals.forEach((interval, id) => this.placeInterval(interval, id));
  }

  private placeInterval(interval: Interval, id: number): void {
    const { model, kernel } = this;
    const { store } = kernel;
    const presence = isOptional(model, interval) && interval.presence !== null ? this.literal(interval.presence) : -1;
    const start = this.term(interval.start);
    const end = this.term(interval.end);
    const isOwn = presence < 0 || (store.owner[start.variable] === presence && store.owner[end.variable] === presence);
    const conditions = isOwn ? [] : [presence];
    if (
      typeof interval.duration === 'number' &&
      (start.variable !== end.variable || end.offset - start.offset !== interval.duration)
    ) {
      kernel.postArc(start, end, interval.duration, conditions, -2 - id, 'duration');
      kernel.postArc(end, start, -interval.duration, conditions, -2 - id, 'duration');
    }
    if (isOwn) {
      this.require(2 * start.variable, 0 - start.offset);
      this.require(2 * end.variable + 1, end.offset - model.horizon);
    } else {
      const bounds = conditions.map((l) => 1 - (l & 1));
      kernel.postNogood([...conditions, 2 * start.variable + 1], [...bounds, 1 + start.offset], -2 - id);
      kernel.postNogood([...conditions, 2 * end.variable], [...bounds, model.horizon + 1 - end.offset], -2 - id);
    }
    const duration = typeof interval.duration === 'number' ? null : this.term(interval.duration.variable);
    this.intervals.push({
      start,
      end,
      duration,
      minDuration:
        duration === null ? (interval.duration as number) : Math.max(0, store.min(duration.variable) + duration.offset),
      presence,
    });
  }

  /** Raise a bound before anything runs; crossing makes the interval absent or the model infeasible. */
  private require(side: number, bound: number): void {
    if (!this.kernel.store.set(side, bound, 0)) this.kernel.consistent = false;
  }

  private noteImplications(): void {
    for (const c of this.model.constraints) {
      const [whole, parts] =
        c.kind === 'alternative' ? [c.master, c.options] : c.kind === 'span' ? [c.cover, c.members] : [-1, []];
      if (whole < 0) continue;
      const b = this.interval(whole).presence;
      if (b < 0) continue;
      for (const part of parts) {
        const a = this.interval(part).presence;
        if (a >= 0 && !this.kernel.implies(b, a)) this.kernel.noteImplication(a, b);
      }
    }
  }

  /** A fresh boolean; returns its literal. */
  newBoolean(): number {
    return 2 * this.kernel.newVariable(0, 1);
  }

  block(from: Point, to: Point): Block {
    const length = this.leastLength(from, to);
    return { from: [from], to, isPossiblyEmpty: length <= 0 };
  }

  /** Least time from one instant to another of the same interval, as far as its durations tell; else 0. */
  leastLength(from: Point, to: Point): number {
    if (from.interval !== to.interval) return 0;
    const { minDuration } = this.interval(from.interval);
    const shift = to.offset - from.offset;
    if (from.of === to.of) return shift;
    return from.of === 'start' ? shift + minDuration : shift - this.model.horizon;
  }

  /**
   * The literal "first ends before second begins", false meaning the reverse, for two stretches that may not overlap. One
   * variable per pair of stretches of masters, whoever carries them out; a fresh one each time where both may be empty,
   * since ties then leave the order open.
   */
  orderLiteral(first: Block, second: Block): number {
    if (first.isPossiblyEmpty && second.isPossiblyEmpty) return this.newOrder(first, second);
    const a = this.blockKey(first);
    const b = this.blockKey(second);
    const isTurned = a > b;
    const key = isTurned ? `${b}|${a}` : `${a}|${b}`;
    let literal = this.orderByKey.get(key);
    if (literal === undefined) {
      literal = isTurned ? this.newOrder(second, first) : this.newOrder(first, second);
      this.orderByKey.set(key, literal);
    }
    return isTurned ? literal ^ 1 : literal;
  }

  /** Per order variable: pairs of presences (literal or -1) under which its value matters. */
  readonly orderMatters = new Map<number, [number, number][]>();

  noteOrderUse(literal: number, a: number, b: number): void {
    const uses = this.orderMatters.get(literal >> 1) ?? [];
    if (!uses.some(([x, y]) => (x === a && y === b) || (x === b && y === a))) uses.push([a, b]);
    this.orderMatters.set(literal >> 1, uses);
  }

  private newOrder(first: Block, second: Block): number {
    const literal = this.newBoolean();
    this.orders.push({ variable: literal >> 1, first, second });
    return literal;
  }

  /** Auxiliary variables for the sum of the direct transitions of a sequence that has none of its own. */
  readonly totals: { readonly variable: number; readonly constraint: number }[] = [];

  newTotal(constraint: number): number {
    const variable = this.kernel.newVariable(0, this.model.horizon);
    this.totals.push({ variable, constraint });
    return variable;
  }

  /** Auxiliary variables that are at least the expression of an objective level. */
  readonly objectiveVariables: { readonly variable: number; readonly level: number }[] = [];

  /** Per auxiliary support literal: state constraint, need, writer or -1 for the initial value. */
  readonly supports: {
    readonly variable: number;
    readonly constraint: number;
    readonly need: number;
    readonly writer: number;
  }[] = [];

  newSupport(constraint: number, need: number, writer: number): number {
    const literal = this.newBoolean();
    this.supports.push({ variable: literal >> 1, constraint, need, writer });
    return literal;
  }

  /** Whether two intervals may run at one time as far as their present bounds and lags that always hold tell. */
  canOverlap(i: IntervalId, j: IntervalId): boolean {
    if (this.follows?.comesBefore(i, j) || this.follows?.comesBefore(j, i)) return false;
    const a = this.interval(i);
    const b = this.interval(j);
    return this.upper(a.end) > this.lower(b.start) && this.upper(b.end) > this.lower(a.start);
  }
  private lower({ variable, offset }: Term): number {
    return this.kernel.store.min(variable) + offset;
  }
  private upper({ variable, offset }: Term): number {
    return this.kernel.store.max(variable) + offset;
  }

  private blockKey({ from, to }: Block): string {
    let key = '';
    for (const point of from) key += `${this.pointKey(point)},`;
    return `${key}-${this.pointKey(to)}`;
  }
  private pointKey({ interval, of, offset }: Point): string {
    return `${this.root(interval)}${of === 'start' ? 's' : 'e'}${offset}`;
  }

  root(id: IntervalId): IntervalId {
    const above = this.roots[id] as number;
    return above === id ? id : this.root(above);
  }
}
