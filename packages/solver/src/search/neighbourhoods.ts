import type { Compilation, EngineInterval } from '../engine/compilation.ts';
import type { Random } from './random.ts';

const KINDS = 4;

/**
 * Parts of a plan to free while the rest keeps its choices (who, in which order, served by what; times follow). Kinds: a window
 * of time, the work of one sequence or resource, that of two, any work. A kind is drawn by how often it helped lately, and its size
 * grows while it is searched through without success and shrinks when it is too large.
 */
export class Neighbourhoods {
  private readonly at: Compilation;
  private readonly random: Random;
  /** Per boolean: the masters it speaks of. */
  private readonly subjects = new Map<number, number[]>();
  private readonly masters: number[];
  private readonly groups: number[][];
  private readonly reward = new Float64Array(KINDS).fill(1);
  private readonly share = new Float64Array(KINDS).fill(0.25);
  private kind = 0;

  constructor(at: Compilation, random: Random) {
    this.at = at;
    this.random = random;
    const speaksOf = (variable: number, interval: number) => {
      const root = at.root(interval);
      const known = this.subjects.get(variable) ?? [];
      if (!known.includes(root)) known.push(root);
      this.subjects.set(variable, known);
    };
    at.intervals.forEach(({ presence }, id) => {
      if (presence >= 0) speaksOf(presence >> 1, id);
    });
    for (const { variable, first, second } of at.orders) {
      speaksOf(variable, first.to.interval);
      speaksOf(variable, second.to.interval);
    }
    const groups: number[][] = [];
    for (const c of at.model.constraints) {
      if (c.kind === 'sequence' || c.kind === 'cumulative') groups.push(c.members.map(({ interval }) => interval));
      if (c.kind === 'state') {
        groups.push([...c.writers, ...c.needs].map(({ to }) => to.interval));
        for (const { variable, constraint, need, writer } of at.supports) {
          if (at.model.constraints[constraint] !== c) continue;
          speaksOf(variable, (c.needs[need] as { to: { interval: number } }).to.interval);
          if (writer >= 0) speaksOf(variable, (c.writers[writer] as { to: { interval: number } }).to.interval);
        }
      }
    }
    this.groups = groups.filter((members) => members.length > 1);
    this.masters = [...new Set([...this.subjects.values()].flat())];
  }

  get isUseful(): boolean {
    return this.masters.length > 3;
  }

  /** Booleans that keep their value; the others are free. */
  draw(wish: Float64Array): number[] {
    const { random, masters } = this;
    const total = this.reward.reduce((sum, r) => sum + r, 0);
    let ticket = random.fraction() * total;
    this.kind = 0;
    while (this.kind < KINDS - 1 && ticket >= (this.reward[this.kind] as number))
      ticket -= this.reward[this.kind++] as number;
    const count = Math.max(2, Math.round(masters.length * (this.share[this.kind] as number)));
    const free = new Set(this.chosen(count, wish));
    const kept: number[] = [];
    for (const [variable, subjects] of this.subjects) {
      if (!subjects.some((root) => free.has(root)) && !Number.isNaN(wish[variable])) kept.push(variable);
    }
    return kept;
  }

  private chosen(count: number, wish: Float64Array): number[] {
    const { random, masters } = this;
    const startOf = (id: number) => {
      const { start } = this.at.intervals[id] as EngineInterval;
      return (wish[start.variable] as number) + start.offset;
    };
    if (this.kind === 0) {
      const sorted = masters.filter((id) => !Number.isNaN(startOf(id))).sort((a, b) => startOf(a) - startOf(b));
      const from = random.below(Math.max(1, sorted.length - count + 1));
      return sorted.slice(from, from + count);
    }
    const pool =
      this.kind === 3 || this.groups.length === 0
        ? [...masters]
        : Array.from({ length: this.kind }, () => this.groups[random.below(this.groups.length)] as number[])
            .flat()
            .filter((id) => this.isPlanned(id, wish))
            .map((id) => this.at.root(id));
    for (let i = pool.length - 1; i > 0; i--) {
      const j = random.below(i + 1);
      [pool[i], pool[j]] = [pool[j] as number, pool[i] as number];
    }
    return pool.slice(0, this.kind === 3 ? count : Math.max(count, 3) * 2);
  }

  private isPlanned(id: number, wish: Float64Array): boolean {
    const { presence } = this.at.intervals[id] as EngineInterval;
    return presence < 0 || wish[presence >> 1] === (presence & 1 ? 0 : 1);
  }

  /** How the last one went. `isExhausted`: searched through without a better plan. */
  report(isBetter: boolean, isExhausted: boolean): void {
    const k = this.kind;
    this.reward[k] = Math.max(0.1, 0.9 * (this.reward[k] as number) + (isBetter ? 1 : 0));
    if (isBetter) return;
    const factor = isExhausted ? 1.08 : 0.92;
    this.share[k] = Math.min(0.9, Math.max(0.05, (this.share[k] as number) * factor));
  }
}
