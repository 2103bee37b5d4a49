/**
 * The shortest joint way home of at most two people: who closes what, in which order, and who passes the hatch first.
 *
 * Jobs do not hinder each other (each piece is closed by one person, tools stay where they are), so for one person and one set
 * of jobs only the earliest finish at the hatch matters: a dynamic programme over (set, last job), exact also with jobs that
 * are released later. Then every split of the jobs between the two is tried, and both orders at the hatch. Up to MOST_JOBS
 * jobs that is the minimum over all assignments and orders; beyond, jobs of one place are taken together, and beyond that each
 * goes to whoever can do it first: an upper bound, and said so. A job with a deadline is done by then, or the plan is none.
 */
import type { Job } from './closing-jobs.ts';
import type { Start } from './way-home-state.ts';

export const MOST_JOBS = 8;

export interface Walker {
  readonly person: string;
  readonly pace: number;
  readonly starts: readonly Start[];
  /** Added to every start: loads put away, work on what is in hand. */
  readonly firstS: number;
  /** From place to place at this person's pace; null: no way. */
  readonly travelS: (from: string, to: string) => number | null;
  readonly passageS: number;
  readonly inHatch: boolean;
}
export interface Chain {
  readonly start: Start;
  readonly jobs: readonly Job[];
  readonly atHatchS: number;
}
export interface JointPlan {
  /** In the order of `walkers`. */
  readonly chains: readonly Chain[];
  /** Indices of walkers in the order in which they pass the hatch. */
  readonly order: readonly number[];
  readonly bothInS: number;
  /** The minimum over all assignments and orders, not only the best found. */
  readonly proved: boolean;
}

/** null: somebody has no way to the hatch, or a job that nobody can do. */
export function jointPlan(
  walkers: readonly Walker[],
  jobs: readonly Job[],
  hatch: string,
  closeHatchS: number,
): JointPlan | null {
  const merged = jobs.length > MOST_JOBS ? byPlace(jobs) : jobs;
  if (merged.length > MOST_JOBS) return greedy(walkers, merged, hatch, closeHatchS);
  const tables = walkers.map((walker) => earliest(walker, merged, hatch));
  const all = (1 << merged.length) - 1;
  let best: JointPlan | null = null;
  const [first, second] = tables;
  if (first === undefined) {
    return merged.length > 0 ? null : { chains: [], order: [], bothInS: closeHatchS, proved: true };
  }
  for (let mask = 0; mask <= all; mask++) {
    const chains = second === undefined ? [first(mask)] : [first(mask), second(all & ~mask)];
    if (second === undefined && mask !== all) continue;
    if (chains.some((chain) => chain === null)) continue;
    const passed = throughHatch(walkers, chains as Chain[], closeHatchS);
    if (best === null || passed.bothInS < best.bothInS) {
      best = { chains: chains as Chain[], ...passed, proved: merged === jobs };
    }
  }
  return best;
}

/** One at a time; whoever is in the hatch already comes first. */
export function throughHatch(
  walkers: readonly Pick<Walker, 'passageS' | 'inHatch'>[],
  chains: readonly { readonly atHatchS: number }[],
  closeHatchS: number,
): { readonly order: readonly number[]; readonly bothInS: number } {
  const orders =
    walkers.length < 2
      ? [walkers.map((_, index) => index)]
      : [
          [0, 1],
          [1, 0],
        ];
  let best: { order: readonly number[]; bothInS: number } | null = null;
  for (const order of orders) {
    if (
      walkers.length === 2 &&
      walkers[order[1] as number]?.inHatch === true &&
      walkers[order[0] as number]?.inHatch !== true
    )
      continue;
    let freeS = 0;
    for (const index of order) {
      freeS = Math.max(freeS, chains[index]?.atHatchS ?? 0) + (walkers[index]?.passageS ?? 0);
    }
    if (best === null || freeS + closeHatchS < best.bothInS) best = { order, bothInS: freeS + closeHatchS };
  }
  return best ?? { order: [], bothInS: closeHatchS };
}

/** For one person: the earliest arrival at the hatch with exactly this set of jobs done, over all starts and orders. */
function earliest(walker: Walker, jobs: readonly Job[], hatch: string): (mask: number) => Chain | null {
  const known = new Map<number, Chain | null>();
  return (mask) => {
    const before = known.get(mask);
    if (before !== undefined) return before;
    let best: Chain | null = null;
    for (const start of walker.starts) {
      const chain = fromStart(walker, start, jobs, mask, hatch);
      if (chain !== null && (best === null || chain.atHatchS < best.atHatchS)) best = chain;
    }
    known.set(mask, best);
    return best;
  };
}

function fromStart(walker: Walker, start: Start, jobs: readonly Job[], mask: number, hatch: string): Chain | null {
  const mine = jobs.map((_, index) => index).filter((index) => (mask & (1 << index)) !== 0);
  if (mine.some((index) => jobs[index]?.by.includes(walker.person) !== true)) return null;
  const count = mine.length;
  const size = 1 << count;
  const finish = new Float64Array(size * Math.max(1, count)).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(size * Math.max(1, count)).fill(-1);
  const placeOf = (at: number): string => jobs[mine[at] as number]?.place ?? start.place;
  const isAway = (set: number): boolean => {
    for (let at = 0; at < count; at++) if ((set & (1 << at)) !== 0 && placeOf(at) !== start.place) return true;
    return false;
  };
  const beginS = start.delayS + walker.firstS;
  /** Arrival at `to` after `timeS` at `at`, with `set` done: whoever has not left yet gets out of the restraint first. */
  const arrive = (timeS: number, at: string, set: number, to: string, staysHere: boolean): number => {
    const left = isAway(set);
    if (staysHere && at === to) return timeS;
    const leaveS = left ? 0 : start.leaveS;
    const wayS = walker.travelS(left ? at : start.exit, to);
    return wayS === null ? Number.POSITIVE_INFINITY : timeS + leaveS + wayS;
  };
  const end = (arriveS: number, at: number): number => {
    const job = jobs[mine[at] as number] as Job;
    const endS = Math.max(arriveS, job.releaseS) + job.durationS * walker.pace;
    return endS > job.deadlineS ? Number.POSITIVE_INFINITY : endS;
  };
  for (let at = 0; at < count; at++) {
    finish[(1 << at) * count + at] = end(arrive(beginS, start.place, 0, placeOf(at), true), at);
  }
  for (let set = 1; set < size; set++) {
    for (let last = 0; last < count; last++) {
      const timeS = finish[set * count + last] as number;
      if (timeS === Number.POSITIVE_INFINITY || timeS === undefined) continue;
      for (let next = 0; next < count; next++) {
        if ((set & (1 << next)) !== 0) continue;
        const slot = (set | (1 << next)) * count + next;
        const endS = end(arrive(timeS, placeOf(last), set, placeOf(next), true), next);
        if (endS < (finish[slot] as number)) {
          finish[slot] = endS;
          from[slot] = last;
        }
      }
    }
  }
  if (count === 0) {
    const atHatchS = arrive(beginS, start.place, 0, hatch, false);
    return atHatchS === Number.POSITIVE_INFINITY ? null : { start, jobs: [], atHatchS };
  }
  let bestLast = -1;
  let bestS = Number.POSITIVE_INFINITY;
  for (let last = 0; last < count; last++) {
    const timeS = finish[(size - 1) * count + last] as number;
    const atS = arrive(timeS, placeOf(last), size - 1, hatch, false);
    if (atS < bestS) {
      bestS = atS;
      bestLast = last;
    }
  }
  if (bestLast < 0) return null;
  const order: Job[] = [];
  for (let set = size - 1, last = bestLast; last >= 0; ) {
    order.unshift(jobs[mine[last] as number] as Job);
    const previous = from[set * count + last] as number;
    set &= ~(1 << last);
    last = previous;
  }
  return { start, jobs: order, atHatchS: bestS };
}

/** Jobs of one place that the same people can do become one. */
function byPlace(jobs: readonly Job[]): readonly Job[] {
  const groups = new Map<string, Job[]>();
  for (const job of jobs) {
    const key = `${job.place ?? '-'}|${job.by.join('+')}`;
    groups.set(key, [...(groups.get(key) ?? []), job]);
  }
  return [...groups.values()].map((group): Job => {
    const [only] = group;
    if (group.length === 1 && only !== undefined) return only;
    return {
      id: group.map((job) => job.id).join('+'),
      pieces: group.flatMap((job) => job.pieces),
      place: only?.place ?? null,
      by: only?.by ?? [],
      durationS: group.reduce((sum, job) => sum + job.durationS, 0),
      releaseS: Math.max(...group.map((job) => job.releaseS)),
      deadlineS: Math.min(...group.map((job) => job.deadlineS)),
      clocks: group.flatMap((job) => job.clocks),
      words: group.map((job) => job.words).join(', '),
      verbs: group.flatMap((job) => job.verbs),
      openedBy: [...new Set(group.flatMap((job) => job.openedBy))],
    };
  });
}

/** Each job in turn to the chain that is at the hatch earliest with it at its end. */
function greedy(
  walkers: readonly Walker[],
  jobs: readonly Job[],
  hatch: string,
  closeHatchS: number,
): JointPlan | null {
  let chosen: Job[][] = walkers.map(() => []);
  const chainOf = (walker: Walker, list: readonly Job[]): Chain | null => {
    let best: Chain | null = null;
    for (const start of walker.starts) {
      const atHatchS = walkInOrder(walker, start, list, hatch);
      if (atHatchS !== null && (best === null || atHatchS < best.atHatchS)) best = { start, jobs: list, atHatchS };
    }
    return best;
  };
  for (const job of jobs) {
    let best: { chosen: Job[][]; atS: number } | null = null;
    walkers.forEach((walker, index) => {
      if (!job.by.includes(walker.person)) return;
      const list = [...(chosen[index] ?? []), job];
      const chain = chainOf(walker, list);
      if (chain !== null && (best === null || chain.atHatchS < best.atS)) {
        best = { chosen: chosen.map((other, at) => (at === index ? list : other)), atS: chain.atHatchS };
      }
    });
    if (best === null) return null;
    chosen = (best as { chosen: Job[][] }).chosen;
  }
  const chains = walkers.map((walker, index) => chainOf(walker, chosen[index] ?? []));
  if (chains.some((chain) => chain === null)) return null;
  return { chains: chains as Chain[], ...throughHatch(walkers, chains as Chain[], closeHatchS), proved: false };
}

function walkInOrder(walker: Walker, start: Start, list: readonly Job[], hatch: string): number | null {
  let timeS = start.delayS + walker.firstS;
  let at = start.place;
  let left = false;
  for (const to of [...list.map((job) => job.place ?? start.place), hatch].entries()) {
    const [index, place] = to;
    const job = list[index];
    if (place !== at || job === undefined) {
      const wayS = walker.travelS(left ? at : start.exit, place);
      if (wayS === null) return null;
      timeS += (left ? 0 : start.leaveS) + wayS;
      left = true;
      at = place;
    }
    if (job === undefined) continue;
    timeS = Math.max(timeS, job.releaseS) + job.durationS * walker.pace;
    if (timeS > job.deadlineS) return null;
  }
  return timeS;
}
