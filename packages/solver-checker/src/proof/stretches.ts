import type { IntervalId, Point } from '@handrail/solver/model/model';
import type { Stretch } from './read-proof-line.ts';

/** What stretches are compared by. Lengths are those that the model's bounds promise. */
interface Lengths {
  mastersOf(id: IntervalId): readonly IntervalId[];
  shortest(id: IntervalId): number;
  longest(id: IntervalId): number;
}

/** What the model alone says of stretches of time. It never changes, so that each answer is worked out once. */
export class Stretches {
  private readonly lengths: Lengths;
  private readonly masters = new WeakMap<Stretch, Stretch>();
  private readonly wholes = new WeakMap<object, readonly Stretch[]>();
  private readonly matches = new WeakMap<readonly Stretch[], WeakMap<Stretch, readonly number[]>>();

  constructor(lengths: Lengths) {
    this.lengths = lengths;
  }

  /** A stretch of options as that of their masters, which it is when they are present. */
  atMasters(stretch: Stretch): Stretch {
    const known = this.masters.get(stretch);
    if (known !== undefined) return known;
    const { from, to } = stretch;
    const made = { from: from.map((point) => this.pointAtMaster(point)), to: this.pointAtMaster(to) };
    this.masters.set(stretch, made);
    return made;
  }

  /** From start to end of each member of a constraint. */
  ofMembers(constraint: { readonly members: readonly { readonly interval: IntervalId }[] }): readonly Stretch[] {
    const known = this.wholes.get(constraint);
    if (known !== undefined) return known;
    const made = constraint.members.map(({ interval }) => ({
      from: [{ interval, of: 'start' as const, offset: 0 }],
      to: { interval, of: 'end' as const, offset: 0 },
    }));
    this.wholes.set(constraint, made);
    return made;
  }

  /** Which of `stretches`, a list that stays as it is, are the same stretch of time as this one. */
  matching(stretches: readonly Stretch[], stretch: Stretch): readonly number[] {
    let matches = this.matches.get(stretches);
    if (matches === undefined) {
      matches = new WeakMap();
      this.matches.set(stretches, matches);
    }
    let found = matches.get(stretch);
    if (found === undefined) {
      found = stretches.flatMap((own, i) => (this.areSame(stretch, own) ? [i] : []));
      matches.set(stretch, found);
    }
    return found;
  }

  mayBeEmpty(stretch: Stretch): boolean {
    return stretch.from.every((point) => this.leastLength(point, stretch.to) <= 0);
  }

  /** Least time from one instant to another that durations alone promise; -∞ where they promise nothing. */
  leastLength(from: Point, to: Point): number {
    if (from.interval !== to.interval) return Number.NEGATIVE_INFINITY;
    const shift = to.offset - from.offset;
    if (from.of === to.of) return shift;
    return from.of === 'start'
      ? shift + this.lengths.shortest(from.interval)
      : shift - this.lengths.longest(from.interval);
  }

  /** Whether both are the same stretch of time, masters having taken the place of their options. */
  private areSame(a: Stretch, b: Stretch): boolean {
    const [x, y] = [this.atMasters(a), this.atMasters(b)];
    if (!isSamePoint(x.to, y.to)) return false;
    const covers = (one: Stretch, other: Stretch) =>
      one.from.every((p) => other.from.some((q) => isSamePoint(p, q) || this.leastLength(q, p) >= 0));
    return covers(x, y) && covers(y, x);
  }

  private pointAtMaster(point: Point): Point {
    const master = this.lengths.mastersOf(point.interval).at(-1);
    return master === undefined || master === point.interval
      ? point
      : this.pointAtMaster({ ...point, interval: master });
  }
}

function isSamePoint(a: Point, b: Point): boolean {
  return a.interval === b.interval && a.of === b.of && a.offset === b.offset;
}
