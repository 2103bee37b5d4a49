import type { Kernel, Term } from '../engine/kernel.ts';
import { ReasonedPropagator, sidesOf } from './reasoned.ts';

export interface ReservoirEvent {
  readonly at: Term;
  readonly presence: number;
  readonly change: number;
}

/**
 * The level never falls below a floor: at every instant u, what was there + every gain that may have come by u + every loss
 * that must have come by u ≥ floor. A ceiling is a floor with all signs turned.
 */
export class ReservoirPropagator extends ReasonedPropagator {
  private readonly events: readonly ReservoirEvent[];
  private readonly initial: number;
  private readonly floor: number;

  constructor(kernel: Kernel, events: readonly ReservoirEvent[], initial: number, floor: number, constraint: number) {
    super(kernel, constraint, 'reservoir', 2);
    this.events = events.filter(({ change }) => change !== 0);
    this.initial = initial;
    this.floor = floor;
    kernel.post(
      this,
      sidesOf(
        this.events.map(({ at }) => at),
        this.events.filter(({ presence }) => presence >= 0).map(({ presence }) => presence),
      ),
    );
  }

  propagate(): boolean {
    const instants = new Set<number>();
    for (const e of this.events) {
      if (e.change > 0) continue;
      instants.add(this.upper(e.at));
      instants.add(this.lower(e.at));
    }
    for (const u of [...instants].sort((a, b) => a - b)) if (!this.checkAt(u)) return false;
    return true;
  }

  private isAbsent(e: ReservoirEvent): boolean {
    return e.presence >= 0 && this.kernel.store.fails(e.presence);
  }
  private isPresent(e: ReservoirEvent): boolean {
    return e.presence < 0 || this.kernel.store.holds(e.presence);
  }
  private mustCome(e: ReservoirEvent, u: number): boolean {
    return this.isPresent(e) && this.upper(e.at) <= u;
  }

  private checkAt(u: number): boolean {
    let best = this.initial;
    for (const e of this.events) {
      if (e.change > 0 ? !this.isAbsent(e) && this.lower(e.at) <= u : this.mustCome(e, u)) best += e.change;
    }
    const slack = best - this.floor;
    if (slack < 0) {
      this.premisesAt(u, -1);
      return this.fail();
    }
    for (let i = 0; i < this.events.length; i++) {
      const e = this.events[i] as ReservoirEvent;
      if (Math.abs(e.change) <= slack || this.isAbsent(e)) continue;
      if (e.change > 0) {
        if (this.lower(e.at) > u || this.mustCome(e, u)) continue;
        this.premisesAt(u, i);
        if (e.presence >= 0 && !this.makeTrue(e.presence)) return false;
        if (!this.raiseAtMost(e.at, u)) return false;
      } else {
        if (this.mustCome(e, u) || this.lower(e.at) > u) continue;
        this.premisesAt(u, i);
        const isConditional = e.presence >= 0 && this.kernel.store.owner[e.at.variable] === e.presence;
        if (this.isPresent(e) || isConditional) {
          if (e.presence >= 0 && !isConditional) this.premiseLiteral(e.presence);
          if (!this.raiseAtLeast(e.at, u + 1)) return false;
        } else if (this.upper(e.at) <= u) {
          this.premiseAtMost(e.at, u);
          if (!this.makeTrue(e.presence ^ 1)) return false;
        }
      }
    }
    return true;
  }

  /** Why the level at u is what it is at best: gains that can not come by u and losses that must. */
  private premisesAt(u: number, except: number): void {
    this.noPremises();
    this.events.forEach((e, i) => {
      if (i === except) return;
      if (e.change > 0) {
        if (this.isAbsent(e)) this.premiseLiteral(e.presence ^ 1);
        else if (this.lower(e.at) > u) this.premiseAtLeast(e.at, u + 1);
      } else if (this.mustCome(e, u)) {
        if (e.presence >= 0) this.premiseLiteral(e.presence);
        this.premiseAtMost(e.at, u);
      }
    });
  }
}
