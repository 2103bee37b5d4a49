import type { Kernel, Term } from '../engine/kernel.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';

type Window = readonly [number, number];

/** The stretch [from, to] lies within one window: a ≤ from < b, to ≤ b. A bound in a gap moves to the next window. */
export class InsideWindowsPropagator extends ReasonedPropagator {
  private readonly from: Term;
  private readonly to: Term;
  private readonly windows: readonly Window[];
  private readonly conditions: readonly number[];
  private readonly neededForFrom: readonly number[];
  private readonly neededForTo: readonly number[];
  /** Least length of the stretch, and what `from` must stay short of a window's end by. */
  private readonly length: number;
  private readonly tail: number;

  constructor(
    kernel: Kernel,
    from: Term,
    to: Term,
    length: number,
    windows: readonly Window[],
    conditions: readonly number[],
    constraint: number,
  ) {
    super(kernel, constraint, 'windows', 1);
    this.from = from;
    this.to = to;
    this.length = length;
    this.tail = Math.max(length, 1);
    this.windows = windows.filter(([a, b]) => b - a >= this.tail);
    this.conditions = conditions;
    this.neededForFrom = this.neededFor(from, conditions);
    this.neededForTo = this.neededFor(to, conditions);
    kernel.post(this, sidesOf([from, to], conditions));
  }

  propagate(): boolean {
    if (this.anyFails(this.conditions)) return true;
    if (!this.refuteIfNone()) return false;
    if (this.allHold(this.neededForFrom) && !this.moveFrom()) return false;
    return !this.allHold(this.neededForTo) || this.moveTo();
  }

  private refuteIfNone(): boolean {
    const { from, to, windows, length, tail } = this;
    const a0 = this.lower(from);
    const a1 = this.upper(from);
    const b0 = this.lower(to);
    const b1 = this.upper(to);
    for (const [a, b] of windows) {
      if (Math.max(a, a0) <= Math.min(b - tail, a1) && b0 <= b && b1 >= a + length) return true;
    }
    this.noPremises();
    this.premiseAtLeast(from, a0);
    this.premiseAtMost(from, a1);
    this.premiseAtLeast(to, b0);
    this.premiseAtMost(to, b1);
    return this.refuteOne(this.conditions);
  }

  private moveFrom(): boolean {
    const { from, to, windows, tail } = this;
    const start = this.lower(from);
    let i = windows.findIndex(([, b]) => start <= b - tail);
    if (i >= 0 && start < (windows[i] as Window)[0]) {
      this.noPremises();
      if (i > 0) this.premiseAtLeast(from, (windows[i - 1] as Window)[1] - tail + 1);
      this.premiseLiterals(this.neededForFrom);
      if (!this.raiseAtLeast(from, (windows[i] as Window)[0])) return false;
    }
    const finish = this.lower(to);
    i = windows.findIndex(([, b]) => finish <= b);
    if (i > 0 && this.lower(from) < (windows[i] as Window)[0]) {
      this.noPremises();
      this.premiseAtLeast(to, (windows[i - 1] as Window)[1] + 1);
      this.premiseLiterals(this.neededForFrom);
      if (!this.raiseAtLeast(from, (windows[i] as Window)[0])) return false;
    }
    const latest = this.upper(from);
    const last = windows.findLastIndex(([a]) => a <= latest);
    if (last >= 0 && latest > (windows[last] as Window)[1] - tail) {
      this.noPremises();
      if (last + 1 < windows.length) this.premiseAtMost(from, (windows[last + 1] as Window)[0] - 1);
      this.premiseLiterals(this.neededForFrom);
      return this.raiseAtMost(from, (windows[last] as Window)[1] - tail);
    }
    return true;
  }

  private moveTo(): boolean {
    const { from, to, windows, length } = this;
    const finish = this.upper(to);
    let i = windows.findLastIndex(([a]) => a + length <= finish);
    if (i >= 0 && finish > (windows[i] as Window)[1]) {
      this.noPremises();
      if (i + 1 < windows.length) this.premiseAtMost(to, (windows[i + 1] as Window)[0] + length - 1);
      this.premiseLiterals(this.neededForTo);
      if (!this.raiseAtMost(to, (windows[i] as Window)[1])) return false;
    }
    const start = this.upper(from);
    i = windows.findLastIndex(([a]) => a <= start);
    if (i >= 0 && this.upper(to) > (windows[i] as Window)[1]) {
      this.noPremises();
      if (i + 1 < windows.length) this.premiseAtMost(from, (windows[i + 1] as Window)[0] - 1);
      this.premiseLiterals(this.neededForTo);
      return this.raiseAtMost(to, (windows[i] as Window)[1]);
    }
    return true;
  }
}

/** The stretch meets none of the windows: for each, from ≥ b, or from < a and to ≤ a. */
export class OutsideWindowsPropagator extends ReasonedPropagator {
  private readonly from: Term;
  private readonly to: Term;
  private readonly windows: readonly Window[];
  private readonly conditions: readonly number[];
  private readonly neededForFrom: readonly number[];
  private readonly neededForTo: readonly number[];

  constructor(
    kernel: Kernel,
    from: Term,
    to: Term,
    windows: readonly Window[],
    conditions: readonly number[],
    constraint: number,
  ) {
    super(kernel, constraint, 'windows', 1);
    this.from = from;
    this.to = to;
    this.windows = windows;
    this.conditions = conditions;
    this.neededForFrom = this.neededFor(from, conditions);
    this.neededForTo = this.neededFor(to, conditions);
    kernel.post(this, sidesOf([from, to], conditions));
  }

  propagate(): boolean {
    if (this.anyFails(this.conditions)) return true;
    const { from, to } = this;
    for (const [a, b] of this.windows) {
      const start = this.lower(from);
      if ((start >= a || this.lower(to) > a) && start < b) {
        const byStart = start >= a;
        if (this.upper(from) < b) {
          this.noPremises();
          if (byStart) this.premiseAtLeast(from, a);
          else this.premiseAtLeast(to, a + 1);
          this.premiseAtMost(from, b - 1);
          if (!this.refuteOne(this.conditions)) return false;
          if (this.anyFails(this.conditions)) return true;
        }
        if (this.allHold(this.neededForFrom)) {
          this.noPremises();
          if (byStart) this.premiseAtLeast(from, a);
          else this.premiseAtLeast(to, a + 1);
          this.premiseLiterals(this.neededForFrom);
          if (!this.raiseAtLeast(from, b)) return false;
        }
      }
      if (this.upper(from) < b && (this.upper(from) >= a || this.upper(to) > a)) {
        this.noPremises();
        this.premiseAtMost(from, b - 1);
        if (this.allHold(this.neededForFrom)) {
          this.premiseLiterals(this.neededForFrom);
          if (!this.raiseAtMost(from, a - 1)) return false;
        }
        if (this.allHold(this.neededForTo)) {
          this.noPremises();
          this.premiseAtMost(from, b - 1);
          this.premiseLiterals(this.neededForTo);
          if (!this.raiseAtMost(to, a)) return false;
        }
      }
    }
    return true;
  }
}
