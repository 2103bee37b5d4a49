import type { Cumulative, Reservoir } from '@handrail/solver/model/model';
import type { View } from '../view.ts';
import { exceedsIn, type Load, proposedStretch } from './energy.ts';
import { brokenOrder } from './orders.ts';

interface NamedLoad extends Load {
  readonly id: number;
}

export function refutesCumulative(constraint: Cumulative, view: View): boolean {
  const { capacity, members } = constraint;
  const demands = new Map<number, number>();
  for (const { interval, demand } of members) demands.set(interval, (demands.get(interval) ?? 0) + demand);
  const present: NamedLoad[] = [...demands]
    .filter(([id, demand]) => demand > 0 && view.isPresent(id))
    .map(([id, demand]) => ({ id, demand, times: view.times(id) }));
  if (capacity < 0 || present.some(({ demand, times }) => demand > capacity && times.duration.min > 0)) return true;
  const stretch = proposedStretch(view.label);
  if (stretch !== null && exceedsIn(present, capacity, ...stretch)) return true;
  return (
    exceedsSomewhere(present, capacity) || breaksOrder(constraint, present, view) || lacksEnergy(present, capacity)
  );
}

/** Members that run for certain at the same instant ask for too much. */
function exceedsSomewhere(present: readonly Load[], capacity: number): boolean {
  const sure = present.filter(({ times }) => times.start.max < times.end.min);
  return sure.some(
    ({
      times: {
        start: { max: instant },
      },
    }) => {
      let load = 0;
      for (const { times, demand } of sure) if (times.start.max <= instant && instant < times.end.min) load += demand;
      return load > capacity;
    },
  );
}

/** Two members that together ask for too much and both last some time come one after the other. */
function breaksOrder(constraint: Cumulative, present: readonly NamedLoad[], view: View): boolean {
  if (view.orders.length === 0) return false;
  const lasting = new Map(present.filter(({ times }) => times.duration.min > 0).map((load) => [load.id, load]));
  const loadOf = (i: number) => lasting.get((constraint.members[i] as { interval: number }).interval);
  const areApart = (i: number, j: number) => {
    const [a, b] = [loadOf(i), loadOf(j)];
    return a !== undefined && b !== undefined && a !== b && a.demand + b.demand > constraint.capacity;
  };
  return brokenOrder(view, view.reading.stretches.ofMembers(constraint), areApart);
}

/** In some stretch of time the members that cannot get out of it need more than there is. */
function lacksEnergy(present: readonly Load[], capacity: number): boolean {
  const begins = [...new Set(present.flatMap(({ times }) => [times.start.min, times.start.max]))];
  const ends = [...new Set(present.flatMap(({ times }) => [times.end.max, times.end.min]))];
  return begins.some((a) => ends.some((b) => exceedsIn(present, capacity, a, b)));
}

/** At some instant the level is out of its range whatever the events that may still fall on either side of it do. */
export function refutesReservoir({ initial, min, max, events }: Reservoir, view: View): boolean {
  if (initial < min || initial > max) return true;
  const real = events
    .filter(({ at }) => !view.isAbsent(at.interval))
    .map(({ at, change }) => ({ range: view.instant(at), change, isSure: view.isPresent(at.interval) }));
  const instants = new Set(real.flatMap(({ range }) => [range.min - 1, range.min, range.max - 1, range.max]));
  for (const instant of instants) {
    let lowest = initial;
    let highest = initial;
    for (const { range, change, isSure } of real) {
      const mayHaveHappened = range.min <= instant;
      const hasHappened = isSure && mayHaveHappened && range.max <= instant;
      if (hasHappened || (mayHaveHappened && change < 0)) lowest += change;
      if (hasHappened || (mayHaveHappened && change > 0)) highest += change;
    }
    if (highest < min || lowest > max) return true;
  }
  return false;
}
