import type { Kernel } from '../engine/kernel.ts';
import { ReasonedPropagator } from './reasoned.ts';

/** A side plus a constant: `value` of the side read upwards. For a minimum the mirrored sides are given. */
export interface SideTerm {
  readonly side: number;
  readonly offset: number;
}
export interface HullCandidate extends SideTerm {
  /** Presence literal, or -1: always. */
  readonly presence: number;
}

/**
 * `result` equals one of the present candidates' values, or `otherwise` when none is present (null: then it means nothing).
 * Raises the mirror of `result`: it is at most the greatest that a candidate may still reach. With `isMaximum` also: when
 * only one candidate can reach the result's lower bound, it is present and reaches it.
 */
export class HullPropagator extends ReasonedPropagator {
  private readonly result: SideTerm;
  private readonly candidates: readonly HullCandidate[];
  private readonly otherwise: number | null;
  private readonly isMaximum: boolean;
  /** Presence of the interval that the result belongs to, or -1. */
  private readonly whole: number;

  constructor(
    kernel: Kernel,
    result: SideTerm,
    candidates: readonly HullCandidate[],
    otherwise: number | null,
    isMaximum: boolean,
    whole: number,
    constraint: number,
    label: string,
  ) {
    super(kernel, constraint, label, 1);
    this.result = result;
    this.candidates = candidates;
    this.otherwise = otherwise;
    this.isMaximum = isMaximum;
    this.whole = whole;
    const sides = [result.side];
    for (const c of candidates) {
      sides.push(c.side ^ 1);
      if (c.presence >= 0) sides.push(c.presence, c.presence ^ 1);
    }
    if (whole >= 0) sides.push(whole);
    kernel.post(this, sides);
  }

  private highest(c: SideTerm): number {
    return c.offset - (this.kernel.store.lb[c.side ^ 1] as number);
  }

  propagate(): boolean {
    const store = this.kernel.store;
    const { candidates, otherwise, result } = this;
    let top = Number.NEGATIVE_INFINITY;
    let sure = -1;
    for (let i = 0; i < candidates.length; i++) {
      const c = candidates[i] as HullCandidate;
      if (c.presence >= 0 && store.fails(c.presence)) continue;
      top = Math.max(top, this.highest(c));
      if (c.presence < 0 || store.holds(c.presence)) sure = i;
    }
    const mayBeNone = sure < 0 && otherwise !== null;
    if (mayBeNone) top = Math.max(top, otherwise);
    if (top === Number.NEGATIVE_INFINITY) return true;
    if (this.mayRaiseResult() && this.highest(result) > top) {
      this.premisesAtMost(top, -1, sure);
      if (this.whole >= 0 && !this.isConditional()) this.premiseLiteral(this.whole);
      if (!this.raise(result.side ^ 1, result.offset - top)) return false;
    }
    return !this.isMaximum || this.support(sure, mayBeNone);
  }

  private isConditional(): boolean {
    return this.kernel.store.owner[this.result.side >> 1] === this.whole;
  }
  private mayRaiseResult(): boolean {
    return this.whole < 0 || this.isConditional() || this.kernel.store.holds(this.whole);
  }

  /** For every candidate but one: it is absent, or at most `value`. */
  private premisesAtMost(value: number, except: number, sure: number): void {
    const store = this.kernel.store;
    this.noPremises();
    this.candidates.forEach((c, i) => {
      if (i === except) return;
      if (c.presence >= 0 && store.fails(c.presence)) this.premiseLiteral(c.presence ^ 1);
      else this.premise(c.side ^ 1, c.offset - value);
    });
    if (this.otherwise !== null && this.otherwise > value && sure >= 0) {
      const presence = (this.candidates[sure] as HullCandidate).presence;
      if (presence >= 0) this.premiseLiteral(presence);
    }
  }

  private support(sure: number, mayBeNone: boolean): boolean {
    const store = this.kernel.store;
    const { candidates, result, whole } = this;
    if (whole >= 0 && !store.holds(whole)) return true;
    const need = (store.lb[result.side] as number) + result.offset;
    if (mayBeNone && (this.otherwise as number) >= need) return this.supportNone(need);
    let only = -1;
    for (let i = 0; i < candidates.length; i++) {
      const c = candidates[i] as HullCandidate;
      if ((c.presence >= 0 && store.fails(c.presence)) || this.highest(c) < need) continue;
      if (only >= 0) return true;
      only = i;
    }
    if (only < 0) return true;
    const c = candidates[only] as HullCandidate;
    this.premisesAtMost(need - 1, only, sure);
    this.premise(result.side, need - result.offset);
    if (whole >= 0) this.premiseLiteral(whole);
    if (c.presence >= 0 && !this.makeTrue(c.presence)) return false;
    return this.raise(c.side, need - c.offset);
  }

  /** All candidates are absent: the result is `otherwise`. */
  private supportNone(_need: number): boolean {
    const store = this.kernel.store;
    this.noPremises();
    for (const c of this.candidates) {
      if (c.presence < 0 || !store.fails(c.presence)) return true;
      this.premiseLiteral(c.presence ^ 1);
    }
    const otherwise = this.otherwise as number;
    if (!this.raise(this.result.side, otherwise - this.result.offset)) return false;
    return this.raise(this.result.side ^ 1, this.result.offset - otherwise);
  }
}
