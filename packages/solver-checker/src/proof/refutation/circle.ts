import type { Constraint, Interval, Model, Point, Sequence } from '@handrail/solver/model/model';
import type { Stretch } from '../read-proof-line.ts';
import type { View } from '../view.ts';
import { decidedPairs } from './orders.ts';
import { tablesOf } from './sequence-tables.ts';
import { areApartInState, holdsOf } from './state.ts';

/** The value of `to` is at least that of `from` plus `weight`; both are variables that stand for themselves. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/**
 * Whether differences of times, each promised by one of the constraints named, go round in a circle with a positive sum: then
 * not all that is taken as true can be. `viewOf` gives what a constraint may know of order variables.
 */
export function closesCircle(named: readonly number[], model: Model, viewOf: (constraint: number) => View): boolean {
  const edges = named.flatMap((index) => {
    const view = viewOf(index);
    const promise = new Promises(view);
    if (index < -1) {
      const interval = model.intervals[-2 - index];
      if (interval !== undefined) promise.ofInterval(-2 - index, interval);
    } else {
      const constraint = model.constraints[index];
      if (constraint !== undefined) promise.of(constraint);
    }
    return promise.edges;
  });
  return hasPositiveCircle(edges);
}

/** Longest ways from everywhere at once: they go on growing after as many rounds as there are variables only round a circle. */
function hasPositiveCircle(edges: readonly Edge[]): boolean {
  const reach = new Map<number, number>();
  for (const { from, to } of edges) {
    reach.set(from, 0);
    reach.set(to, 0);
  }
  for (let round = 0; round <= reach.size; round++) {
    let grows = false;
    for (const { from, to, weight } of edges) {
      const way = (reach.get(from) as number) + weight;
      if (way <= (reach.get(to) as number)) continue;
      reach.set(to, way);
      grows = true;
    }
    if (!grows) return false;
  }
  return edges.length > 0;
}

/** Collects what constraints promise of differences of times where a view takes their intervals as present. */
class Promises {
  readonly edges: Edge[] = [];
  private readonly view: View;

  constructor(view: View) {
    this.view = view;
  }

  of(c: Constraint): void {
    switch (c.kind) {
      case 'precedence':
        if (this.view.allTrue(c.when)) this.points(c.from, c.to, c.lag);
        return;
      case 'windows':
        if (this.view.allTrue(c.when)) this.points(c.from, c.to, 0);
        return;
      case 'alternative':
        for (const option of new Set(c.options)) {
          for (const [a, b] of [[start(option), start(c.master)] as const, [end(option), end(c.master)] as const]) {
            this.points(a, b, 0);
            this.points(b, a, 0);
          }
          this.equalDurations(option, c.master);
        }
        return;
      case 'span':
        for (const member of c.members) {
          this.points(start(c.cover), start(member), 0);
          this.points(end(member), end(c.cover), 0);
        }
        return;
      case 'extreme':
        for (const point of c.points) this.extreme(point, c.result, c.which === 'max');
        return;
      case 'sequence':
        return this.ofSequence(c);
      case 'cumulative': {
        const demands = new Map<number, number>();
        for (const { interval, demand } of c.members) demands.set(interval, (demands.get(interval) ?? 0) + demand);
        const ids = c.members.map(({ interval }) => interval);
        const demand = (i: number) => demands.get(ids[i] as number) as number;
        for (const id of demands.keys())
          if ((demands.get(id) as number) > c.capacity) this.points(end(id), start(id), 0);
        // Only the first naming of an interval stands for it.
        const lasts = (i: number) =>
          ids.indexOf(ids[i] as number) === i && this.view.times(ids[i] as number).duration.min > 0;
        this.ordered(
          this.view.reading.stretches.ofMembers(c),
          (i, j) => demand(i) + demand(j) > c.capacity && lasts(i) && lasts(j),
        );
        return;
      }
      case 'state': {
        for (const { from, to } of [...c.writers, ...c.needs]) this.points(from, to, 0);
        const holds = holdsOf(c);
        this.ordered(holds, (i, j) => areApartInState(holds, i, j));
        return;
      }
      default:
        return;
    }
  }

  ofInterval(id: number, { duration }: Interval): void {
    const range = typeof duration === 'number' ? { min: duration, max: duration } : this.view.times(id).duration;
    this.points(start(id), end(id), range.min);
    this.points(end(id), start(id), -range.max);
  }

  private ofSequence(c: Sequence): void {
    const ids = c.members.map(({ interval }) => interval);
    const { least, isFirstNaming } = tablesOf(c, this.view.reading);
    ids.forEach((id, i) => {
      if (!isFirstNaming[i]) this.points(end(id), start(id), 0);
    });
    this.ordered(
      this.view.reading.stretches.ofMembers(c),
      (i, j) => isFirstNaming[i] === true && isFirstNaming[j] === true,
      (i, j) => least[i * ids.length + j] as number,
    );
  }

  /** Stretches that are kept apart, in the order that is taken as true, with a gap between them. */
  private ordered(
    stretches: readonly Stretch[],
    areApart: (i: number, j: number) => boolean,
    gap: (i: number, j: number) => number = () => 0,
  ): void {
    for (const { before, after, isSpeaking } of decidedPairs(this.view, stretches, areApart)) {
      if (!isSpeaking) continue;
      const [a, b] = [stretches[before] as Stretch, stretches[after] as Stretch];
      for (const point of b.from) this.points(a.to, point, gap(before, after));
    }
  }

  private points(from: Point, to: Point, lag: number): void {
    if (!this.view.isPresent(from.interval) || !this.view.isPresent(to.interval)) return;
    const [a, b] = [this.term(from), this.term(to)];
    this.edges.push({ from: a.variable, to: b.variable, weight: lag + a.offset - b.offset });
  }

  private extreme(point: Point, result: number, isMax: boolean): void {
    if (!this.view.isPresent(point.interval)) return;
    const [a, b] = [this.term(point), this.view.reading.standIn(result)];
    if (isMax) this.edges.push({ from: a.variable, to: b.variable, weight: a.offset - b.offset });
    else this.edges.push({ from: b.variable, to: a.variable, weight: b.offset - a.offset });
  }

  private equalDurations(i: number, j: number): void {
    const [a, b] = [i, j].map((id) => this.view.reading.interval(id).duration);
    if (typeof a !== 'object' || typeof b !== 'object' || !this.view.isPresent(i) || !this.view.isPresent(j)) return;
    const [x, y] = [a, b].map(({ variable }) => this.view.reading.standIn(variable));
    if (x === undefined || y === undefined) return;
    this.edges.push({ from: x.variable, to: y.variable, weight: x.offset - y.offset });
    this.edges.push({ from: y.variable, to: x.variable, weight: y.offset - x.offset });
  }

  private term({ interval, of, offset }: Point): { readonly variable: number; readonly offset: number } {
    const { start: first, end: last } = this.view.reading.interval(interval);
    const real = this.view.reading.standIn(of === 'start' ? first : last);
    return { variable: real.variable, offset: real.offset + offset };
  }
}

function start(interval: number): Point {
  return { interval, of: 'start', offset: 0 };
}
function end(interval: number): Point {
  return { interval, of: 'end', offset: 0 };
}
