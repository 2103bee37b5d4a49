import type { Literal } from '@handrail/solver/model/model';
import type { Atom } from './atom.ts';
import type { Reading } from './reading.ts';

/**
 * Lower and upper bounds of all proof variables, with undo. Bounds of an owned variable say "if its owner holds": when they
 * cross the owner is false. `isContradictory` once bounds cross that hold for certain.
 */
export class Bounds {
  readonly reading: Reading;
  isContradictory = false;
  private readonly lower: number[] = [];
  private readonly upper: number[] = [];
  /** Variables whose times fall under each boolean, by its variable. */
  private readonly owned = new Map<number, number[]>();
  private readonly undo: number[] = [];

  constructor(reading: Reading) {
    this.reading = reading;
    reading.model.variables.forEach(({ min, max }, variable) => this.add(variable, min, max));
    reading.model.variables.forEach((_, variable) => {
      const owner = reading.ownerOf(variable);
      if (owner === null) return;
      const list = this.owned.get(owner.variable) ?? [];
      list.push(variable);
      this.owned.set(owner.variable, list);
    });
    this.readModel();
  }

  /** A further variable. Its number must not be in use; numbers between that have no meaning yet are left open. */
  add(variable: number, min: number, max: number): void {
    this.lower[variable] = min;
    this.upper[variable] = max;
  }

  min(variable: number): number {
    return this.lower[variable] as number;
  }
  max(variable: number): number {
    return this.upper[variable] as number;
  }
  has({ variable, isAtLeast, bound }: Atom): boolean {
    return isAtLeast ? this.min(variable) >= bound : this.max(variable) <= bound;
  }
  isTrue({ variable, holds }: Literal): boolean {
    return holds === 1 ? this.min(variable) >= 1 : this.max(variable) <= 0;
  }
  isFalse({ variable, holds }: Literal): boolean {
    return holds === 1 ? this.max(variable) <= 0 : this.min(variable) >= 1;
  }
  /** Holds for certain, not only where its owner does. */
  hasFirmly(atom: Atom): boolean {
    const owner = this.reading.ownerOf(atom.variable);
    return this.has(atom) && (owner === null || this.isTrue(owner));
  }

  mark(): number {
    return this.undo.length;
  }
  revert(mark: number): void {
    while (this.undo.length > mark) {
      const upper = this.undo.pop() as number;
      const lower = this.undo.pop() as number;
      const variable = this.undo.pop() as number;
      this.lower[variable] = lower;
      this.upper[variable] = upper;
    }
    this.isContradictory = false;
  }

  /** Takes an atom as true; says whether anything changed. */
  set(atom: Atom): boolean {
    if (this.has(atom)) return false;
    const { variable, isAtLeast, bound } = atom;
    this.undo.push(variable, this.min(variable), this.max(variable));
    if (isAtLeast) this.lower[variable] = bound;
    else this.upper[variable] = bound;
    if (this.min(variable) > this.max(variable)) this.cross(variable);
    if (!this.isContradictory) this.spread(variable);
    return true;
  }

  setLiteral({ variable, holds }: Literal): boolean {
    return this.set({ variable, isAtLeast: holds === 1, bound: holds });
  }

  private cross(variable: number): void {
    const owner = this.reading.ownerOf(variable);
    if (owner === null || this.isTrue(owner)) this.isContradictory = true;
    else this.setLiteral({ variable: owner.variable, holds: owner.holds === 1 ? 0 : 1 });
  }

  /** What a boolean that has just been settled brings with it. */
  private spread(variable: number): void {
    if (this.min(variable) !== this.max(variable)) return;
    for (const owned of this.owned.get(variable) ?? []) {
      const owner = this.reading.ownerOf(owned) as Literal;
      if (this.isTrue(owner) && this.min(owned) > this.max(owned)) this.isContradictory = true;
    }
    for (const literal of this.reading.impliedWith({ variable, holds: this.min(variable) >= 1 ? 1 : 0 })) {
      if (!this.isContradictory && !this.isTrue(literal)) this.setLiteral(literal);
    }
  }

  /** What is known from the start: stand-ins share bounds, and an interval lies between 0 and the horizon. */
  private readModel(): void {
    const { model } = this.reading;
    const put = (variable: number, isAtLeast: boolean, bound: number) => {
      const { variable: real, offset } = this.reading.standIn(variable);
      this.set({ variable: real, isAtLeast, bound: bound - offset });
    };
    model.variables.forEach(({ min, max }, variable) => {
      if (this.reading.standIn(variable).variable === variable) return;
      put(variable, true, min);
      put(variable, false, max);
    });
    for (const { start, end, duration, presence } of model.intervals) {
      const holds = (variable: number) =>
        presence === null || this.isTrue(presence) || this.reading.ownerOf(variable) !== null;
      if (holds(start)) put(start, true, 0);
      if (holds(this.reading.standIn(end).variable)) put(end, false, model.horizon);
      if (typeof duration !== 'number' && holds(duration.variable)) put(duration.variable, true, 0);
    }
  }
}
