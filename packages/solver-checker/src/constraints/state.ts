import type { IntervalId, State } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

interface Hold {
  readonly owner: IntervalId;
  readonly from: number;
  readonly to: number;
}
interface Write extends Hold {
  readonly value: number;
}
interface Need extends Hold {
  readonly allowed: readonly number[];
}

/**
 * Exclusive holds are compared pair by pair; then time is walked once, keeping the set of values the variable may have.
 * The set has more than one value only after writes of no length at one instant, whose order is free: each of them may be
 * the last one, and each of their values occurs whatever the order. A need never sees what its own interval writes.
 */
export function state(constraint: State, at: Assignment): string[] {
  const writes: Write[] = constraint.writers
    .filter(({ from, to }) => at.isPresent(from.interval) && at.isPresent(to.interval))
    .map((w) => ({ owner: w.from.interval, from: at.instantOf(w.from), to: at.instantOf(w.to), value: w.value }));
  const needs: Need[] = constraint.needs
    .filter(({ from, to }) => at.isPresent(from.interval) && at.isPresent(to.interval))
    .map((n) => {
      // An own write that begins before the need moves the need's beginning forward to it.
      const own = writes.filter(({ owner }) => owner === n.from.interval).map(({ from }) => from);
      const from = Math.min(at.instantOf(n.from), ...own);
      return { owner: n.from.interval, from, to: at.instantOf(n.to), allowed: n.allowed };
    });
  const label = (hold: Hold) => `${at.interval(hold.owner).name} [${hold.from}, ${hold.to}]`;
  const faults: string[] = [];
  for (const hold of [...writes, ...needs]) {
    if (hold.to < hold.from) faults.push(`the hold of ${label(hold)} on ${constraint.name} ends before it begins`);
  }
  writes.forEach((write, i) => {
    for (const other of writes.slice(i + 1)) {
      if (overlap(write, other)) faults.push(`${label(write)} and ${label(other)} both write ${constraint.name}`);
    }
    for (const need of needs) {
      if (need.owner !== write.owner && overlap(write, need)) {
        faults.push(`${label(write)} writes ${constraint.name} while ${label(need)} needs it`);
      }
    }
  });
  if (faults.length > 0) return faults;
  for (const need of unmetNeeds(constraint, writes, needs)) {
    faults.push(`${label(need)} needs ${constraint.name} to be one of ${need.allowed.join(', ')}, which it is not`);
  }
  return faults;
}

function overlap(a: Hold, b: Hold): boolean {
  return a.to > b.from && b.to > a.from;
}

function unmetNeeds(constraint: State, writes: readonly Write[], needs: readonly Need[]): Need[] {
  const unmet: Need[] = [];
  const pending = new Set(needs);
  let possible = new Set([constraint.initial]);
  const settle = (need: Need) => {
    pending.delete(need);
    const kept = new Set([...possible].filter((value) => need.allowed.includes(value)));
    if (kept.size === 0) unmet.push(need);
    else possible = kept;
  };
  for (const instant of [...new Set(writes.map(({ to }) => to))].sort((a, b) => a - b)) {
    for (const need of pending) if (need.from < instant) settle(need);
    const ending = writes.filter(({ to }) => to === instant);
    const instantaneous = ending.filter(({ from }) => from === instant);
    // A hold with a length that ends here does so before anything of no length happens at this instant.
    const lengthy = ending.find(({ from }) => from < instant);
    if (lengthy !== undefined) possible = new Set([lengthy.value]);
    if (instantaneous.length === 0) continue;
    for (const need of pending) {
      if (need.from !== instant) continue;
      const foreign = instantaneous.filter(({ owner }) => owner !== need.owner);
      const isBrief = need.to === instant;
      // A need with a length comes after all that is foreign at its instant; a brief one may come before or in between.
      if (foreign.length === instantaneous.length && !isBrief) continue;
      if (foreign.some(({ value }) => need.allowed.includes(value))) pending.delete(need);
      else if (isBrief || foreign.length === 0) settle(need);
      else {
        pending.delete(need);
        unmet.push(need);
      }
    }
    possible = new Set(instantaneous.map(({ value }) => value));
  }
  for (const need of pending) settle(need);
  return unmet;
}
