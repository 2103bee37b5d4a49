import { FORBIDDEN, type Sequence, type SequenceMember } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

/**
 * Looks for an order of the present members that obeys the table, `first`, `last` and the claimed total. Times fix the
 * order except among members of no length at one instant, so only those are permuted.
 */
export function sequence(constraint: Sequence, at: Assignment): string[] {
  const present = constraint.members
    .filter(({ interval }) => at.isPresent(interval))
    .sort((a, b) => at.startOf(a.interval) - at.startOf(b.interval) || at.endOf(a.interval) - at.endOf(b.interval));
  const faults: string[] = [];
  for (let i = 1; i < present.length; i++) {
    const a = (present[i - 1] as SequenceMember).interval;
    const b = (present[i] as SequenceMember).interval;
    if (at.startOf(b) < at.endOf(a)) faults.push(`${at.describe(a)} and ${at.describe(b)} overlap`);
  }
  if (faults.length > 0) return faults;
  const claimed = constraint.transitionTotal === null ? null : at.valueOf(constraint.transitionTotal);
  const search = new OrderSearch(constraint, at, present, claimed);
  return search.exists() ? [] : [search.deepestFault];
}

class OrderSearch {
  deepestFault = 'no order of the members obeys the table';
  private readonly constraint: Sequence;
  private readonly at: Assignment;
  private readonly present: readonly SequenceMember[];
  private readonly claimed: number | null;
  private readonly used: boolean[];
  private deepest = -1;

  constructor(constraint: Sequence, at: Assignment, present: readonly SequenceMember[], claimed: number | null) {
    this.constraint = constraint;
    this.at = at;
    this.present = present;
    this.claimed = claimed;
    this.used = present.map(() => false);
  }

  exists(): boolean {
    return this.extend(0, null, 0);
  }

  private extend(placed: number, previous: SequenceMember | null, total: number): boolean {
    if (placed === this.present.length) {
      if (this.claimed === null || this.claimed === total) return true;
      this.note(placed, `the transitions take ${total} in all, the result says ${this.claimed}`);
      return false;
    }
    for (let i = 0; i < this.present.length; i++) {
      if (this.used[i]) continue;
      const next = this.present[i] as SequenceMember;
      // Beyond the first unused one, only members that start and end at the same instant may come instead.
      const gap = this.gapBefore(placed, previous, next);
      if (gap !== null) {
        this.used[i] = true;
        if (this.extend(placed + 1, next, total + gap)) return true;
        this.used[i] = false;
      }
      if (this.at.startOf(next.interval) < this.at.endOf(next.interval)) break;
    }
    return false;
  }

  /** Transition time from `previous` to `next`, or null when `next` may not be placed here. */
  private gapBefore(placed: number, previous: SequenceMember | null, next: SequenceMember): number | null {
    const { first, last, types, transitions } = this.constraint;
    const name = this.at.describe(next.interval);
    if (placed > 0 && next.interval === first) return this.refuse(placed, `${name} does not come first`);
    if (placed < this.present.length - 1 && next.interval === last) {
      return this.refuse(placed, `${name} does not come last`);
    }
    if (previous === null) return 0;
    const gap = transitions[previous.endType * types + next.startType] as number;
    const before = this.at.describe(previous.interval);
    if (gap >= FORBIDDEN) return this.refuse(placed, `${name} may not directly follow ${before}`);
    if (this.at.startOf(next.interval) < this.at.endOf(previous.interval) + gap) {
      return this.refuse(placed, `${name} starts less than ${gap} after ${before}`);
    }
    return gap;
  }

  private refuse(placed: number, fault: string): null {
    this.note(placed, fault);
    return null;
  }

  private note(placed: number, fault: string): void {
    if (placed <= this.deepest) return;
    this.deepest = placed;
    this.deepestFault = fault;
  }
}
