import { ModelBuilder, not } from '@handrail/solver/model/build-model';
import {
  type Constraint,
  FORBIDDEN,
  type IntervalId,
  type LinearExpression,
  type Literal,
  type Model,
  type Point,
} from '@handrail/solver/model/model';

/** A small seeded generator (xorshift), so that a failing case can be run again by its number. */
export class Dice {
  private state: number;
  constructor(seed: number) {
    this.state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bd1e995) | 1;
    for (let i = 0; i < 5; i++) this.roll(2);
  }
  /** An integer 0..sides-1. */
  roll(sides: number): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return (x >>> 0) % sides;
  }
  between(low: number, high: number): number {
    return low + this.roll(high - low + 1);
  }
  chance(percent: number): boolean {
    return this.roll(100) < percent;
  }
  pick<T>(items: readonly T[]): T {
    return items[this.roll(items.length)] as T;
  }
}

export const ALL_KINDS: readonly Constraint['kind'][] = [
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
];

/** A tiny model that mixes the given constraint kinds; small enough to enumerate. */
export function randomModel(seed: number, kinds: readonly Constraint['kind'][] = ALL_KINDS): Model {
  const dice = new Dice(seed);
  const horizon = dice.between(4, 8);
  const b = new ModelBuilder(`random ${seed}`, horizon);
  const booleans = Array.from({ length: dice.between(1, 3) }, (_, i) => b.boolean(`b${i}`));
  const literal = (): Literal => (dice.chance(50) ? dice.pick(booleans) : not(dice.pick(booleans)));
  const intervals: IntervalId[] = [];
  const count = dice.between(2, 4);
  for (let i = 0; i < count; i++) {
    const presence = dice.chance(45) ? literal() : null;
    const low = dice.between(0, 3);
    const duration = dice.chance(20) ? { min: low, max: low + dice.between(0, 2) } : low;
    const startMin = dice.chance(30) ? dice.between(0, 2) : 0;
    intervals.push(b.interval(`i${i}`, duration, { presence, startMin }));
  }
  const spare = b.variable('spare', 0, horizon);
  let isSpareUsed = false;
  const point = (): Point => ({
    interval: dice.pick(intervals),
    of: dice.chance(50) ? 'start' : 'end',
    offset: dice.chance(25) ? dice.between(-1, 1) : 0,
  });
  const stretch = (): { from: Point; to: Point } => {
    const interval = dice.pick(intervals);
    const instants: [Point, Point][] = [
      [
        { interval, of: 'start', offset: 0 },
        { interval, of: 'end', offset: 0 },
      ],
      [
        { interval, of: 'start', offset: 0 },
        { interval, of: 'start', offset: dice.between(0, 1) },
      ],
      [
        { interval, of: 'end', offset: dice.between(-1, 0) },
        { interval, of: 'end', offset: 0 },
      ],
    ];
    const [from, to] = dice.pick(instants);
    return { from, to };
  };
  const when = (): Literal[] => (dice.chance(35) ? [literal()] : []);
  const subset = (least: number): IntervalId[] => {
    const chosen = intervals.filter(() => dice.chance(70));
    return chosen.length >= least ? chosen : [...intervals];
  };
  const post = (kind: Constraint['kind'], tag: string): void => {
    switch (kind) {
      case 'precedence':
        return b.post({ kind, tag, from: point(), to: point(), lag: dice.between(-3, 3), when: when() });
      case 'alternative': {
        const [master, ...options] = subset(2);
        return b.post({ kind, tag, master: master as IntervalId, options });
      }
      case 'span': {
        const [cover, ...members] = subset(2);
        return b.post({ kind, tag, cover: cover as IntervalId, members });
      }
      case 'sequence': {
        const types = dice.between(1, 3);
        const members = subset(2).map((interval) => ({
          interval,
          startType: dice.roll(types),
          endType: dice.roll(types),
        }));
        const isPlain = dice.chance(40);
        const transitions = Array.from({ length: types * types }, () =>
          isPlain ? dice.roll(2) : dice.chance(25) ? FORBIDDEN : dice.between(0, 3),
        );
        const hasTotal = !isSpareUsed && dice.chance(50);
        if (hasTotal) isSpareUsed = true;
        return b.post({
          kind,
          tag,
          members,
          types,
          transitions,
          first: dice.chance(25) ? dice.pick(members).interval : null,
          last: dice.chance(25) ? dice.pick(members).interval : null,
          transitionTotal: hasTotal ? spare : null,
        });
      }
      case 'cumulative': {
        const members = subset(2).map((interval) => ({ interval, demand: dice.between(0, 3) }));
        return b.post({ kind, tag, capacity: dice.between(1, 4), members });
      }
      case 'reservoir': {
        const events = Array.from({ length: dice.between(1, 4) }, () => ({ at: point(), change: dice.between(-3, 3) }));
        return b.post({ kind, tag, initial: dice.between(0, 2), min: 0, max: dice.between(2, 4), events });
      }
      case 'windows': {
        const a = dice.between(0, 2);
        const c = a + dice.between(1, 3);
        const d = c + dice.between(0, 2);
        const windows: [number, number][] = [
          [a, c],
          [d, d + dice.between(1, 3)],
        ];
        const used = dice.chance(70) ? windows : [windows[0] as [number, number]];
        const mode = dice.chance(50) ? 'inside' : 'outside';
        return b.post({ kind, tag, mode, ...stretch(), windows: used, when: when() });
      }
      case 'state': {
        const values = dice.between(2, 3);
        const writers = Array.from({ length: dice.between(1, 3) }, () => ({
          ...stretch(),
          value: dice.roll(values),
          tag: null,
        }));
        const needs = Array.from({ length: dice.between(1, 2) }, () => ({
          ...stretch(),
          allowed: [dice.roll(values)],
          tag: null,
        }));
        return b.post({ kind, tag, name: 's', values, initial: dice.roll(values), writers, needs });
      }
      case 'clause':
        return b.post({ kind, tag, literals: [literal(), literal()] });
      case 'linear':
        return b.post({
          kind,
          tag,
          expression: randomSum(),
          bound: dice.between(0, 12),
          when: when(),
        });
      case 'extreme': {
        if (isSpareUsed) return;
        isSpareUsed = true;
        const points = Array.from({ length: dice.between(1, 3) }, point);
        return b.post({
          kind,
          tag,
          which: dice.chance(50) ? 'max' : 'min',
          result: spare,
          points,
          otherwise: dice.between(0, horizon),
        });
      }
      default:
        kind satisfies never;
        throw new Error('unknown kind');
    }
  };
  const startOf = (interval: IntervalId) => b.intervalAt(interval).start;
  function randomSum(): LinearExpression {
    const terms = Array.from({ length: dice.between(1, 3) }, () => ({
      coefficient: dice.between(-2, 3),
      variable: dice.chance(50)
        ? startOf(dice.pick(intervals))
        : dice.chance(70)
          ? dice.pick(booleans).variable
          : spare,
    }));
    return { terms, constant: dice.between(-1, 1) };
  }
  const total = dice.between(1, 4);
  for (let i = 0; i < total; i++) post(dice.pick(kinds), `c${i}`);
  if (!isSpareUsed) {
    // Nothing bounds it from below, so let it be a makespan.
    for (const interval of intervals) {
      b.post({
        kind: 'precedence',
        tag: null,
        from: { interval, of: 'end', offset: 0 },
        to: { interval, of: 'end', offset: 0 },
        lag: 0,
        when: [],
      });
    }
  }
  const levels = dice.between(0, 2);
  for (let level = 0; level < levels; level++) {
    if (dice.chance(50)) b.minimise(`l${level}`, { terms: [{ coefficient: 1, variable: spare }], constant: 0 });
    else b.minimise(`l${level}`, randomSum());
  }
  return b.build();
}
