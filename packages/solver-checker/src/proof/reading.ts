import type { Interval, IntervalId, Literal, Model } from '@handrail/solver/model/model';
import { Stretches } from './stretches.ts';

/**
 * How a proof reads the variables of a model, worked out from the model alone.
 * `standIn`: the end of an interval of constant duration is read as its start plus that. `owner`: bounds of a time of an optional
 * interval that nothing else reads hold only where the interval is present. `implied`: what a present interval brings with it.
 */
export class Reading {
  readonly model: Model;
  readonly stretches = new Stretches(this);
  readonly owner: readonly (Literal | null)[];
  private readonly standIns: readonly { readonly variable: number; readonly offset: number }[];
  private readonly masters: readonly (readonly IntervalId[])[];
  private readonly wholes: readonly (readonly IntervalId[])[];
  private readonly impliedBy = new Map<number, readonly Literal[]>();

  constructor(model: Model) {
    this.model = model;
    const usesOf = model.variables.map(() => 0);
    for (const interval of model.intervals) for (const v of new Set(times(interval))) usesOf[v] = (usesOf[v] ?? 0) + 1;
    const read = readByOthers(model);
    const owner: (Literal | null)[] = model.variables.map(() => null);
    for (const interval of model.intervals) {
      if (!this.mayBeAbsent(interval)) continue;
      for (const v of times(interval)) if (usesOf[v] === 1 && !read.has(v)) owner[v] = interval.presence;
    }
    this.owner = owner;
    this.standIns = model.variables.map((_, variable) => {
      const ending = model.intervals.find(({ end }) => end === variable);
      if (ending === undefined || typeof ending.duration !== 'number' || usesOf[variable] !== 1)
        return { variable, offset: 0 };
      const { start, duration } = ending;
      const isWhole = !this.mayBeAbsent(ending) || (owner[start] !== null && owner[variable] !== null);
      return start === variable || !isWhole ? { variable, offset: 0 } : { variable: start, offset: duration };
    });
    const masters: IntervalId[][] = model.intervals.map(() => []);
    const wholes: IntervalId[][] = model.intervals.map(() => []);
    for (const c of model.constraints) {
      if (c.kind === 'alternative') {
        for (const option of c.options) {
          masters[option]?.push(c.master);
          wholes[option]?.push(c.master);
        }
      }
      if (c.kind === 'span') for (const member of c.members) wholes[member]?.push(c.cover);
    }
    this.masters = masters;
    this.wholes = wholes;
    for (const start of model.intervals.keys()) this.noteImplied(start);
  }

  standIn(variable: number): { readonly variable: number; readonly offset: number } {
    return this.standIns[variable] ?? { variable, offset: 0 };
  }

  ownerOf(variable: number): Literal | null {
    return this.owner[variable] ?? null;
  }

  mastersOf(id: IntervalId): readonly IntervalId[] {
    return this.masters[id] ?? [];
  }

  interval(id: IntervalId): Interval {
    return this.model.intervals[id] as Interval;
  }

  /** Literals that hold with `literal` because a present option, or member, brings its master, or cover. */
  impliedWith(literal: Literal): readonly Literal[] {
    return this.impliedBy.get(code(literal)) ?? [];
  }

  implies(a: Literal, b: Literal): boolean {
    return code(a) === code(b) || this.impliedWith(a).some((literal) => code(literal) === code(b));
  }

  /** Least length of an interval by the bounds of the model; never below nothing. */
  shortest(id: IntervalId): number {
    const { duration } = this.interval(id);
    return Math.max(0, typeof duration === 'number' ? duration : (this.model.variables[duration.variable]?.min ?? 0));
  }

  /** Greatest length of an interval by the bounds of the model. */
  longest(id: IntervalId): number {
    const { duration } = this.interval(id);
    return typeof duration === 'number' ? duration : (this.model.variables[duration.variable]?.max ?? 0);
  }

  private mayBeAbsent({ presence }: Interval): boolean {
    if (presence === null) return false;
    const { min, max } = this.model.variables[presence.variable] as Model['variables'][number];
    return presence.holds === 1 ? min < 1 : max > 0;
  }

  private noteImplied(start: IntervalId): void {
    const { presence } = this.interval(start);
    if (presence === null) return;
    const reached = new Set<IntervalId>([start]);
    for (const id of reached) for (const whole of this.wholes[id] ?? []) reached.add(whole);
    const literals = [...reached].flatMap((id) => this.interval(id).presence ?? []);
    this.impliedBy.set(code(presence), [...(this.impliedBy.get(code(presence)) ?? []), ...literals]);
  }
}

function code({ variable, holds }: Literal): number {
  return 2 * variable + holds;
}

function times({ start, end, duration }: Interval): number[] {
  return typeof duration === 'number' ? [start, end] : [start, end, duration.variable];
}

function readByOthers(model: Model): Set<number> {
  const read = new Set<number>();
  for (const c of model.constraints) {
    if (c.kind === 'linear') for (const term of c.expression.terms) read.add(term.variable);
    if (c.kind === 'extreme') read.add(c.result);
    if (c.kind === 'sequence' && c.transitionTotal !== null) read.add(c.transitionTotal);
    const literals = 'when' in c ? c.when : c.kind === 'clause' ? c.literals : [];
    for (const { variable } of literals) read.add(variable);
  }
  for (const { presence } of model.intervals) if (presence !== null) read.add(presence.variable);
  for (const { minimise } of model.objectives) for (const term of minimise.terms) read.add(term.variable);
  return read;
}
