import { FORBIDDEN, type Model, type Sequence } from '@handrail/solver/model/model';
import type { View } from '../view.ts';

/** A walk so far: where it is, when it has ended there, what it is worth, and what it remembers having passed. */
interface Walk {
  readonly at: number;
  readonly end: number;
  readonly worth: number;
  readonly passed: bigint;
}

/** A lane as stops with times, and steps between them: read from the model's own bounds, without the engine's tables. */
interface Stops {
  readonly count: number;
  readonly from: number;
  readonly to: number;
  readonly opens: readonly number[];
  readonly closes: readonly number[];
  readonly lasts: readonly number[];
  readonly worth: readonly number[];
  readonly step: (i: number, j: number) => number;
  readonly isOut: readonly boolean[];
}

/**
 * Whether no way through a lane is worth what an objective level asks for. `memories`: the label's numbers, per member that is
 * remembered its number, how many remember it and who. Any choice is sound, since a real way passes nothing twice and is
 * among the walks whatever they remember.
 */
export function refutesWorth(
  variable: number,
  level: number,
  lane: number,
  memories: readonly number[],
  view: View,
): boolean {
  const { model } = view.reading;
  const constraint = model.constraints[lane];
  if (constraint?.kind !== 'sequence') return false;
  const read = readStops(constraint, level, model, view);
  if (read === null) return false;
  const { stops, elsewhere } = read;
  const needed = elsewhere - view.variable(variable).max;
  const keeps = keepersOf(memories, stops.count);
  if (keeps === null) return false;
  const back = mirrored(stops);
  const onward = bestAfter(back, () => 0n, null, needed);
  const found = bestAfter(stops, keeps, onward, needed);
  return !(found[stops.to] ?? []).some(({ worth }) => worth >= needed);
}

function readStops(
  c: Sequence,
  level: number,
  model: Model,
  view: View,
): { readonly stops: Stops; readonly elsewhere: number } | null {
  const ids = [...new Set(c.members.map(({ interval }) => interval))];
  const [from, to] = [c.first, c.last].map((id) => ids.findIndex((other) => other === id && view.isPresent(other)));
  const objective = model.objectives[level];
  if (from === undefined || to === undefined || from < 0 || to < 0 || from === to || objective === undefined)
    return null;
  const worth = ids.map(() => 0);
  let elsewhere = 0;
  for (const { coefficient, variable } of objective.minimise.terms) {
    const i = ids.findIndex((id) => {
      const { presence } = view.reading.interval(id);
      return presence !== null && presence.variable === variable && presence.holds === 1;
    });
    const { min, max } = view.variable(variable);
    if (i >= 0 && coefficient < 0) worth[i] = (worth[i] as number) - coefficient;
    else elsewhere += coefficient * (coefficient > 0 ? min : max);
  }
  const times = ids.map((id) => view.times(id));
  const typed = ids.map((id) => c.members.find(({ interval }) => interval === id) as Sequence['members'][number]);
  const stops: Stops = {
    count: ids.length,
    from,
    to,
    opens: times.map(({ start }) => start.min),
    closes: times.map(({ end }) => end.max),
    lasts: times.map(({ duration }) => duration.min),
    worth,
    step: (i, j) => c.transitions[(typed[i]?.endType as number) * c.types + (typed[j]?.startType as number)] as number,
    isOut: ids.map((id) => view.isAbsent(id)),
  };
  return { stops, elsewhere };
}

/** Per stop, as bits, what a walk still remembers there; null: the numbers make no sense. */
function keepersOf(numbers: readonly number[], count: number): ((at: number) => bigint) | null {
  const kept = Array.from({ length: count }, () => 0n);
  for (let k = 0; k < numbers.length; ) {
    const [who, many] = [numbers[k] as number, numbers[k + 1] ?? -1];
    const keepers = numbers.slice(k + 2, k + 2 + many);
    if (who < 0 || who >= count || many < 0 || keepers.length < many) return null;
    for (const at of [who, ...keepers]) {
      if (kept[at] === undefined) return null;
      kept[at] |= 1n << BigInt(who);
    }
    k += 2 + many;
  }
  return (at) => kept[at] as bigint;
}

function mirrored(stops: Stops): Stops {
  return {
    ...stops,
    from: stops.to,
    to: stops.from,
    opens: stops.closes.map((t) => -t),
    closes: stops.opens.map((t) => -t),
    step: (i, j) => stops.step(j, i),
  };
}

/**
 * Walks from the first stop that none other is as early, as worthy and as forgetful as; those left out, too, that cannot come to
 * what is needed by the best way `onward` (walks of the lane mirrored in time).
 */
function bestAfter(
  stops: Stops,
  keeps: (at: number) => bigint,
  onward: readonly (readonly Walk[])[] | null,
  needed: number,
): Walk[][] {
  const { count, from, to, opens, closes, lasts, worth, step, isOut } = stops;
  const kept: Walk[][] = Array.from({ length: count }, () => []);
  const isBettered = ({ at, end, worth: w, passed }: Walk) =>
    (kept[at] as Walk[]).some((other) => other.end <= end && other.worth >= w && (other.passed & ~passed) === 0n);
  const isHopeless = ({ at, end, worth: w }: Walk) =>
    onward !== null &&
    !(onward[at] ?? []).some(
      (rest) => rest.end <= (lasts[at] as number) - end && w + rest.worth - (worth[at] as number) >= needed,
    );
  // No way is worth more than all there is: without this, circles that take no time would never end.
  const most = worth.reduce((sum, w, i) => (isOut[i] === true ? sum : sum + w), 0);
  // Walks by the time at which they end: those of one time are taken in the order in which they came.
  const waiting = new Map<number, Walk[]>();
  const times: number[] = [];
  const put = (walk: Walk) => {
    const list = waiting.get(walk.end);
    if (list !== undefined) list.push(walk);
    else {
      waiting.set(walk.end, [walk]);
      insertSorted(times, walk.end);
    }
  };
  put({
    at: from,
    end: (opens[from] as number) + (lasts[from] as number),
    worth: worth[from] as number,
    passed: keeps(from) & bit(from),
  });
  for (let time = times.pop(); time !== undefined; time = times.pop()) {
    const list = waiting.get(time) as Walk[];
    for (const walk of list) {
      if (isBettered(walk)) continue;
      (kept[walk.at] as Walk[]).push(walk);
      if (walk.at === to) continue;
      for (let j = 0; j < count; j++) {
        const way = step(walk.at, j);
        if (j === walk.at || j === from || isOut[j] === true || way >= FORBIDDEN || (walk.passed & bit(j)) !== 0n)
          continue;
        const end = Math.max(walk.end + way, opens[j] as number) + (lasts[j] as number);
        if (end > (closes[j] as number)) continue;
        const passed = (walk.passed | bit(j)) & keeps(j);
        const next = { at: j, end, worth: Math.min(most, walk.worth + (worth[j] as number)), passed };
        if (!isHopeless(next) && !isBettered(next)) put(next);
      }
    }
    waiting.delete(time);
  }
  return kept;
}

function bit(stop: number): bigint {
  return 1n << BigInt(stop);
}

/** Latest first, so that the soonest is taken from the end. */
function insertSorted(times: number[], time: number): void {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) > time) low = middle + 1;
    else high = middle;
  }
  times.splice(low, 0, time);
}
