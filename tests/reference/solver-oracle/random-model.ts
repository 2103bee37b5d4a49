import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import { FORBIDDEN, type IntervalId, type Literal, type Model, type Point } from '@handrail/solver/model/model';

export interface RandomModelSize {
  readonly intervals: number;
  readonly horizon: number;
  readonly longest: number;
  readonly constraints: number;
}

/** Small enough for enumeration. */
export const TINY: RandomModelSize = { intervals: 3, horizon: 7, longest: 3, constraints: 3 };
/** Far beyond enumeration, seconds at most for a solver. */
export const MIDDLE: RandomModelSize = { intervals: 9, horizon: 40, longest: 6, constraints: 8 };

const KINDS = [
  'precedence',
  'alternative',
  'span',
  'sequence',
  'cumulative',
  'reservoir',
  'windows',
  'state',
  'clause',
  'linear',
  'extreme',
] as const;

/**
 * A model that mixes constraint kinds, drawn from a seed: the same on every machine. About one in five has no solution.
 * Two objectives: a finish or a weighted sum of starts, then the value of what is left out.
 */
export function randomModel(seed: number, size: RandomModelSize): Model {
  return new RandomModel(seed, size).draw();
}

class RandomModel {
  private state: number;
  private readonly size: RandomModelSize;
  private readonly builder: ModelBuilder;
  private readonly ids: IntervalId[] = [];
  private readonly literals: Literal[] = [];

  constructor(seed: number, size: RandomModelSize) {
    this.state = Math.imul(seed + 1, 0x9e3779b1) | 1;
    this.size = size;
    this.builder = new ModelBuilder(`random ${seed}`, size.horizon);
  }

  draw(): Model {
    const { intervals, longest, constraints } = this.size;
    for (let i = 0; i < intervals; i++) this.drawInterval(`job ${i}`, this.upTo(longest));
    if (this.literals.length === 0) this.literals.push(this.builder.boolean('free'));
    for (let i = 0; i < constraints; i++) this.post(this.pick(KINDS));
    this.drawObjectives();
    return this.builder.build();
  }

  /** 0..n. A 32-bit xorshift: plain, and no statistics hang on it. */
  private upTo(n: number): number {
    this.state ^= this.state << 13;
    this.state ^= this.state >>> 17;
    this.state ^= this.state << 5;
    return (this.state >>> 0) % (n + 1);
  }

  private chance(percent: number): boolean {
    return this.upTo(99) < percent;
  }

  private pick<T>(from: readonly T[]): T {
    return from[this.upTo(from.length - 1)] as T;
  }

  private some<T>(from: readonly T[], atLeast: number): T[] {
    const rest = [...from];
    const chosen: T[] = [];
    const count = Math.min(from.length, atLeast + this.upTo(Math.max(0, from.length - atLeast)));
    while (chosen.length < count) chosen.push(...rest.splice(this.upTo(rest.length - 1), 1));
    return chosen;
  }

  private drawInterval(name: string, length: number, optionalPercent = 45): IntervalId {
    const duration = this.chance(20) ? { min: length, max: length + 1 } : length;
    const options = this.chance(optionalPercent) ? { presence: this.builder.boolean(`does ${name}`) } : {};
    const id = this.builder.interval(name, duration, options);
    if ('presence' in options) this.literals.push(options.presence);
    this.ids.push(id);
    return id;
  }

  private point(interval = this.pick(this.ids)): Point {
    const offset = this.chance(80) ? 0 : this.upTo(2) - 1;
    return this.chance(50) ? startOf(interval, offset) : endOf(interval, offset);
  }

  private literal(): Literal {
    const { variable } = this.pick(this.literals);
    return { variable, holds: this.chance(50) ? 1 : 0 };
  }

  private conditions(): Literal[] {
    return this.chance(25) ? [this.literal()] : [];
  }

  private post(kind: (typeof KINDS)[number]): void {
    const { builder, ids, size } = this;
    const tag = `${kind} requirement`;
    const when = this.conditions();
    if (kind === 'precedence') {
      const [from, to] = [this.point(), this.point()];
      if (from.interval === to.interval) return;
      builder.post({ kind, from, to, lag: this.upTo(3) - 1, when, tag });
      if (this.chance(30)) builder.post({ kind, from: to, to: from, lag: -this.upTo(4) - 3, when, tag });
    } else if (kind === 'alternative') {
      const master = this.pick(ids);
      const options = [0, 1].map((i) => this.drawInterval(`option ${ids.length}.${i}`, this.upTo(size.longest), 100));
      builder.post({ kind, master, options, tag });
    } else if (kind === 'span') {
      const members = this.some(ids, 1).slice(0, 3);
      const presence = builder.boolean(`covers ${ids.length}`);
      const cover = builder.interval(`cover ${ids.length}`, { min: 0, max: size.horizon }, { presence });
      builder.post({ kind, cover, members, tag });
      if (this.chance(50))
        builder.post({ kind: 'precedence', from: startOf(cover), to: endOf(cover), lag: 2, when, tag });
    } else if (kind === 'sequence') {
      this.postSequence(tag);
    } else if (kind === 'cumulative') {
      const members = this.some(ids, 2).map((interval) => ({ interval, demand: 1 + this.upTo(2) }));
      builder.post({ kind, capacity: 2 + this.upTo(2), members, tag });
    } else if (kind === 'reservoir') {
      const events = this.some(ids, 2).map((id) => ({ at: this.point(id), change: this.upTo(6) - 3 }));
      builder.post({ kind, initial: 2, min: 0, max: 4, events, tag });
    } else if (kind === 'windows') {
      const id = this.pick(ids);
      const a = this.upTo(Math.floor(size.horizon / 3));
      const b = a + 1 + this.upTo(Math.floor(size.horizon / 3));
      const c = b + this.upTo(3);
      const windows: [number, number][] = [
        [a, b],
        [c, c + 1 + this.upTo(size.horizon)],
      ];
      const to = this.chance(70) ? endOf(id) : startOf(id);
      builder.post({ kind, mode: this.chance(60) ? 'inside' : 'outside', from: startOf(id), to, windows, when, tag });
    } else if (kind === 'state') {
      this.postState(tag);
    } else if (kind === 'clause') {
      builder.post({ kind, literals: [this.literal(), this.literal()], tag });
    } else if (kind === 'linear') {
      const terms = this.some(ids, 1)
        .slice(0, 3)
        .map((id) => ({ coefficient: this.upTo(4) - 2, variable: builder.intervalAt(id).start }));
      terms.push({ coefficient: this.upTo(6) - 3, variable: this.pick(this.literals).variable });
      builder.post({ kind, expression: { terms, constant: this.upTo(2) }, bound: this.upTo(size.horizon), when, tag });
    } else {
      const result = builder.variable(`extreme ${ids.length}`, -1, size.horizon + 1);
      const points = this.some(ids, 1).map((id) => this.point(id));
      builder.post({ kind, which: this.chance(50) ? 'max' : 'min', result, points, otherwise: this.upTo(2), tag });
    }
  }

  private postSequence(tag: string): void {
    const { builder, size } = this;
    const chosen = this.some(this.ids, 2);
    const types = this.chance(40) ? 1 : 2;
    const time = () => (this.chance(8) ? FORBIDDEN : this.chance(50) ? 0 : this.upTo(2));
    const transitions = Array.from({ length: types * types }, time);
    const total = this.chance(40) ? builder.variable(`total ${this.ids.length}`, 0, 3 * size.intervals) : null;
    const [first, last] = [this.chance(20) ? (chosen[0] ?? null) : null, this.chance(20) ? (chosen[1] ?? null) : null];
    const members = chosen.map((interval) => ({
      interval,
      startType: this.upTo(types - 1),
      endType: this.upTo(types - 1),
    }));
    builder.post({ kind: 'sequence', members, types, transitions, first, last, transitionTotal: total, tag });
  }

  private postState(tag: string): void {
    const chosen = this.some(this.ids, 2);
    const hold = (id: IntervalId) => {
      if (this.chance(60)) return { from: startOf(id), to: endOf(id) };
      const point = this.chance(50) ? startOf(id) : endOf(id);
      return { from: point, to: point };
    };
    const writers = chosen.slice(0, 3).map((id) => ({ ...hold(id), value: this.upTo(2), tag }));
    const needs = this.some(chosen, 1).map((id) => ({ ...hold(id), allowed: this.some([0, 1, 2], 1), tag }));
    this.builder.post({ kind: 'state', name: 'state', values: 3, initial: this.upTo(2), writers, needs, tag });
  }

  private drawObjectives(): void {
    const { builder, ids, size } = this;
    if (this.chance(60)) {
      const finish = builder.variable('finish', 0, size.horizon);
      const points = ids.map((id) => endOf(id));
      builder.post({ kind: 'extreme', which: 'max', result: finish, points, otherwise: 0, tag: null });
      builder.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
    } else {
      const terms = this.some(ids, 1).map((id) => ({
        coefficient: 1 + this.upTo(2),
        variable: builder.intervalAt(id).start,
      }));
      builder.minimise('starts', { terms, constant: 0 });
    }
    const terms = this.literals.map(({ variable }) => ({ coefficient: -1 - this.upTo(3), variable }));
    builder.minimise('left out', { terms, constant: 0 });
  }
}
