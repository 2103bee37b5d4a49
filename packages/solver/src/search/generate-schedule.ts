import type { Project } from './project.ts';
import type { Random } from './random.ts';

/** A schedule of a project: starts, and the time by which all is done. */
export interface Schedule {
  readonly start: Int32Array;
  readonly length: number;
}

/** Members of the population, and schedules without progress after which a new one begins. */
const POPULATION = 60;
const STALE = 1500;

/**
 * Serial schedule generation with double justification (to the right, then to the left, each in the order of the schedule
 * before), and a genetic algorithm over activity lists on top. Feasible schedules, no bounds.
 * @source [KOLISCH-HARTMANN-1999] [VALLS-BALLESTIN-QUINTANILLA-2005]
 */
export class ScheduleGenerator {
  best: Schedule | null = null;
  private readonly project: Project;
  private readonly random: Random;
  private readonly span: number;
  private readonly free: Int32Array[];
  private readonly tail: Int32Array;
  private readonly key: Float64Array;
  private readonly packed: Float64Array;
  private readonly isPlaced: Uint8Array;
  /** Best of the present population, and schedules since it got better. */
  private bestOfBrood = Number.POSITIVE_INFINITY;
  private stale = 0;
  /** Schedules by priority so far. */
  private sampled = 0;
  private population: { readonly list: Int32Array; readonly length: number }[] = [];

  constructor(project: Project, random: Random, horizon: number) {
    this.project = project;
    this.random = random;
    const work = project.duration.reduce((sum, d) => sum + d, 0) + Math.max(0, ...project.release);
    this.span = Math.max(horizon, work) + 1;
    this.free = Array.from(project.capacity, () => new Int32Array(this.span));
    this.tail = this.tails();
    this.key = new Float64Array(project.n);
    this.packed = new Float64Array(project.n);
    this.isPlaced = new Uint8Array(project.n);
  }

  /** Longest way from the start of each task to the end of all. */
  private tails(): Int32Array {
    const { n, duration, after, topological } = this.project;
    const tail = Int32Array.from(duration);
    for (let x = n - 1; x >= 0; x--) {
      const i = topological[x] as number;
      for (const { task, lag } of after[i] as Project['after'][number]) {
        tail[i] = Math.max(tail[i] as number, lag + (tail[task] as number));
      }
    }
    return tail;
  }

  /** Least start of each task by the longest way to it: no schedule starts it sooner. */
  heads(): Int32Array {
    const { n, release, topological, before } = this.project;
    const head = Int32Array.from(release);
    for (let x = 0; x < n; x++) {
      const i = topological[x] as number;
      for (const { task, lag } of before[i] as Project['before'][number]) {
        head[i] = Math.max(head[i] as number, (head[task] as number) + lag);
      }
    }
    return head;
  }

  /** Schedules by latest-start priority until there are `count`, the first plain, the others with noise. Stops at `enough`. */
  sample(count: number, enough: number): void {
    for (; this.sampled < count && !this.isAt(enough); this.sampled++) {
      for (let i = 0; i < this.project.n; i++) {
        const noise = this.sampled === 0 ? 1 : 0.8 + 0.4 * this.random.fraction();
        this.key[i] = -(this.tail[i] as number) * noise;
      }
      this.keep(this.improve(this.listByKey()));
    }
  }

  /** `count` children of the population so far. */
  breed(count: number, enough: number): void {
    const { random } = this;
    for (let x = 0; x < count && !this.isAt(enough); x++) {
      if (this.population.length < 2) {
        this.sample(this.sampled + 2, enough);
        continue;
      }
      if (this.stale >= STALE) this.scatter();
      const mother = this.parent();
      const father = this.parent();
      const child = this.cross(mother.list, father.list);
      if (random.below(100) < 60) this.mutate(child);
      this.keep(this.improve(child));
    }
  }

  private isAt(enough: number): boolean {
    return this.best !== null && this.best.length <= enough;
  }

  private parent() {
    const pick = () => this.population[this.random.below(this.population.length)] as (typeof this.population)[number];
    const a = pick();
    const b = pick();
    return a.length <= b.length ? a : b;
  }

  /** Two-point crossover: an end, a middle and an end by order of mother, father, mother. */
  private cross(mother: Int32Array, father: Int32Array): Int32Array {
    const { n } = this.project;
    const { random, isPlaced } = this;
    let from = random.below(n);
    let to = random.below(n);
    if (from > to) [from, to] = [to, from];
    const child = new Int32Array(n);
    isPlaced.fill(0);
    let size = 0;
    const take = (list: Int32Array, until: number) => {
      for (let x = 0; x < n && size < until; x++) {
        const task = list[x] as number;
        if (isPlaced[task]) continue;
        isPlaced[task] = 1;
        child[size++] = task;
      }
    };
    take(mother, from);
    take(father, to);
    take(mother, n);
    return child;
  }

  private mutate(list: Int32Array): void {
    const { random } = this;
    for (let x = 1 + random.below(3); x > 0; x--) {
      // Move one task earlier or later; the generator restores the order of arcs.
      const at = random.below(list.length);
      const to = Math.max(0, Math.min(list.length - 1, at + random.below(21) - 10));
      const task = list[at] as number;
      if (to < at) list.copyWithin(to + 1, to, at);
      else list.copyWithin(at, at + 1, to + 1);
      list[to] = task;
    }
  }

  private keep(schedule: Schedule | null): void {
    if (schedule === null) return;
    this.stale++;
    if (this.best === null || schedule.length < this.best.length) this.best = schedule;
    if (schedule.length < this.bestOfBrood) {
      this.bestOfBrood = schedule.length;
      this.stale = 0;
    }
    const list = this.listByTime(schedule.start);
    const size = POPULATION;
    if (this.population.length < size) this.population.push({ list, length: schedule.length });
    else {
      let worst = 0;
      for (let x = 1; x < size; x++) {
        if ((this.population[x]?.length as number) > (this.population[worst]?.length as number)) worst = x;
      }
      const twin = this.population.some((other) => other.length === schedule.length && isSame(other.list, list));
      if (!twin && schedule.length <= (this.population[worst]?.length as number)) {
        this.population[worst] = { list, length: schedule.length };
      }
    }
  }

  /** The population has grown alike: begin another one around the best, half of it further away than the other half. */
  private scatter(): void {
    const { n } = this.project;
    const list = this.listByTime((this.best as Schedule).start);
    this.population = [];
    this.bestOfBrood = Number.POSITIVE_INFINITY;
    this.stale = 0;
    for (let x = 0; x < POPULATION; x++) {
      const reach = n * (x % 2 === 0 ? 0.15 : 0.5);
      for (let i = 0; i < n; i++) this.key[list[i] as number] = i + reach * this.random.fraction();
      this.keep(this.improve(this.listByKey()));
    }
  }

  private listByKey(): Int32Array {
    const { key } = this;
    return Int32Array.from(this.project.topological).sort((a, b) => (key[a] as number) - (key[b] as number));
  }

  /** Tasks by a time of each, those of one time in the order of arcs. Sorted as plain numbers: time and place in one. */
  private listByTime(time: Int32Array): Int32Array {
    const { n, topological } = this.project;
    const { packed } = this;
    for (let x = 0; x < n; x++) packed[x] = (time[topological[x] as number] as number) * n + x;
    packed.sort();
    const list = new Int32Array(n);
    for (let x = 0; x < n; x++) list[x] = topological[(packed[x] as number) % n] as number;
    return list;
  }

  /** Generate from a list, then justify right and left until that no longer helps. Null: a deadline was missed. */
  private improve(list: Int32Array): Schedule | null {
    let start = this.forward(list);
    let length = this.lengthOf(start);
    for (let round = 0; round < 2; round++) {
      const late = this.backward(start, length);
      if (late === null) break;
      const next = this.forward(this.listByTime(late));
      const nextLength = this.lengthOf(next);
      if (nextLength > length) break;
      const isBetter = nextLength < length;
      start = next;
      length = nextLength;
      if (!isBetter) break;
    }
    for (let i = 0; i < this.project.n; i++) {
      if ((start[i] as number) + (this.project.duration[i] as number) > (this.project.deadline[i] as number))
        return null;
    }
    return { start, length };
  }

  private lengthOf(start: Int32Array): number {
    let length = 0;
    for (let i = 0; i < this.project.n; i++)
      length = Math.max(length, (start[i] as number) + (this.project.duration[i] as number));
    return length;
  }

  private forward(list: Int32Array): Int32Array {
    const { n } = this.project;
    const start = new Int32Array(n).fill(-1);
    this.clear();
    for (let x = 0; x < n; x++) this.placeEarly(list[x] as number, start);
    return start;
  }

  private placeEarly(i: number, start: Int32Array): void {
    if ((start[i] as number) >= 0) return;
    const { before, release, duration } = this.project;
    let from = release[i] as number;
    for (const { task, lag } of before[i] as Project['before'][number]) {
      this.placeEarly(task, start);
      from = Math.max(from, (start[task] as number) + lag);
    }
    start[i] = this.firstFit(i, from);
    this.take(i, start[i], duration[i] as number);
  }

  /** Latest ends first, each as late as it can be before `length`; null when something would have to start too early. */
  private backward(start: Int32Array, length: number): Int32Array | null {
    const { n, duration, topological } = this.project;
    const { packed } = this;
    for (let x = 0; x < n; x++) {
      const i = topological[n - 1 - x] as number;
      packed[x] = (length - (start[i] as number) - (duration[i] as number)) * n + x;
    }
    packed.sort();
    const late = new Int32Array(n).fill(-1);
    this.clear();
    for (let x = 0; x < n; x++) {
      const i = topological[n - 1 - ((packed[x] as number) % n)] as number;
      if (!this.placeLate(i, late, length)) return null;
    }
    return late;
  }

  /** False: it, or something that comes after it, would have to start too early. */
  private placeLate(i: number, late: Int32Array, length: number): boolean {
    if ((late[i] as number) >= 0) return true;
    const { after, duration, release } = this.project;
    let latest = length - (duration[i] as number);
    for (const { task, lag } of after[i] as Project['after'][number]) {
      if (!this.placeLate(task, late, length)) return false;
      latest = Math.min(latest, (late[task] as number) - lag);
    }
    const at = this.lastFit(i, latest);
    if (at < (release[i] as number) || at < 0) return false;
    late[i] = at;
    this.take(i, at, duration[i] as number);
    return true;
  }

  private clear(): void {
    this.free.forEach((row, resource) => row.fill(this.project.capacity[resource] as number));
  }
  private take(i: number, at: number, duration: number): void {
    for (const { resource, demand } of this.project.uses[i] as Project['uses'][number]) {
      const row = this.free[resource] as Int32Array;
      for (let t = at; t < at + duration; t++) (row[t] as number) -= demand;
    }
  }
  private firstFit(i: number, from: number): number {
    const duration = this.project.duration[i] as number;
    let at = from;
    for (let isClear = false; !isClear; ) {
      isClear = true;
      for (const { resource, demand } of this.project.uses[i] as Project['uses'][number]) {
        const row = this.free[resource] as Int32Array;
        for (let t = at + duration - 1; t >= at; t--) {
          if ((row[t] as number) >= demand || t >= this.span) continue;
          at = t + 1;
          isClear = false;
          break;
        }
      }
    }
    return at;
  }
  private lastFit(i: number, from: number): number {
    const duration = this.project.duration[i] as number;
    let at = from;
    for (let isClear = false; !isClear && at >= 0; ) {
      isClear = true;
      for (const { resource, demand } of this.project.uses[i] as Project['uses'][number]) {
        const row = this.free[resource] as Int32Array;
        for (let t = at; t < at + duration; t++) {
          if ((row[t] as number) >= demand) continue;
          at = t - duration;
          isClear = false;
          break;
        }
        if (at < 0) return -1;
      }
    }
    return at;
  }
}

function isSame(a: Int32Array, b: Int32Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
