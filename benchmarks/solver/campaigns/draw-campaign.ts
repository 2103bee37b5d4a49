import { SeededRandom } from './seeded-random.ts';

/** Times in units of 10 s. */
export interface CampaignShape {
  readonly stints: number;
  readonly crew: number;
  /** Share of roles that any of the crew may take, in per cent; the others are named. */
  readonly openPercent: number;
}

export interface DrawnStint {
  readonly name: string;
  /** Stints of one task come one after the other, and one person leads them all. */
  readonly task: number;
  readonly duration: number;
  /** Places where it starts and ends. */
  readonly from: number;
  readonly to: number;
  /** Who does it in the plan that shows the campaign can be done; more than one for joint work. */
  readonly crew: readonly number[];
  readonly isOpen: boolean;
  /** What it is worth when it may be left out; null when it has to be done. */
  readonly value: number | null;
  readonly restraint: number | null;
  readonly isInEclipse: boolean;
  /** Number of the swap it is the picking up, or the putting down, of. */
  readonly picksUp: number | null;
  readonly putsDown: number | null;
  /** State chain it belongs to, with what it needs and what it leaves. */
  readonly item: number | null;
  readonly needs: readonly number[];
  readonly writes: number | null;
}

export interface DrawnCampaign {
  readonly shape: CampaignShape;
  /** Shortest times between places; place 0 is the hatch. */
  readonly travel: readonly (readonly number[])[];
  readonly stints: readonly DrawnStint[];
  readonly items: number;
  readonly restraints: number;
  readonly swaps: number;
  /** Start of each stint in the plan that shows the campaign can be done. */
  readonly witness: readonly number[];
  readonly eclipses: readonly (readonly [number, number])[];
}

/** Orbit of 92 min with 36 min of eclipse, in 10 s. Common practice for a low orbit; nothing hangs on the exact numbers. */
const ORBIT = 552;
const ECLIPSE = 216;
export const HATCH_TIME = 60;

/** A chain of states opened, used, closed, opened again by another stint, used and closed: two producers of one state. */
const CHAIN = [
  { needs: [0], writes: 1 },
  { needs: [1], writes: null },
  { needs: [1], writes: 0 },
  { needs: [0], writes: 1 },
  { needs: [1], writes: null },
  { needs: [1], writes: 0 },
] as const;

/**
 * Draws a campaign in the order of a plan that can be done, so that it has a solution by construction: tasks of two to six stints in
 * a fixed order under one lead, named or open, joint work, travel over a graph of places, state chains, shared restraints, swaps, eclipse windows and optional inserts.
 */
export function drawCampaign(seed: number, shape: CampaignShape): DrawnCampaign {
  const random = new SeededRandom(seed * 7919 + shape.stints);
  const { stints: count, crew } = shape;
  const travel = drawTravel(random, 6 + Math.floor(count / 4));
  const restraints = Math.max(1, Math.floor(count / 12));
  const items = Math.max(1, Math.floor(count / 12));
  const swaps = Math.max(1, Math.floor(count / 10));
  const links = placeChains(random, count, items);
  const stints: DrawnStint[] = [];
  let task = 0;
  let swapped = 0;
  while (stints.length < count) {
    const first = stints.length;
    const isInsert = !links.has(first) && random.chance(25);
    const size = isInsert ? 1 : Math.min(count - first, random.between(2, 6));
    const lead = random.upTo(crew - 1);
    const isOpen = random.chance(shape.openPercent);
    const site = random.between(1, travel.length - 1);
    // Where in the task something is taken in hand, if it is, and put down with the next stint.
    const pickAt = size >= 3 && swapped < swaps && random.chance(60) ? first + random.upTo(size - 2) : -1;
    for (let i = first; i < first + size; i++) {
      const link = links.get(i) ?? null;
      const picksUp = i === pickAt ? swapped : null;
      const putsDown = pickAt >= 0 && i === pickAt + 1 ? swapped : null;
      const isSwap = picksUp !== null || putsDown !== null;
      const isJoint = !isSwap && !isInsert && random.chance(15);
      const second = (lead + 1 + random.upTo(crew - 2)) % crew;
      const from = random.chance(70) ? site : random.between(1, travel.length - 1);
      stints.push({
        name: `stint ${i + 1}`,
        task,
        duration: 30 * random.between(1, 5),
        from,
        to: random.chance(5) ? random.between(1, travel.length - 1) : from,
        crew: isJoint ? [lead, second] : [lead],
        isOpen,
        value: isInsert ? random.between(1, 9) : null,
        restraint: random.chance(25) ? random.upTo(restraints - 1) : null,
        isInEclipse: !isSwap && random.chance(7),
        picksUp,
        putsDown,
        item: link?.item ?? null,
        needs: link === null ? [] : (CHAIN[link.step]?.needs ?? []),
        writes: link === null ? null : (CHAIN[link.step]?.writes ?? null),
      });
    }
    if (pickAt >= 0) swapped += 1;
    task += 1;
  }
  const eclipses = Array.from({ length: 4 * count }, (_, k) => [k * ORBIT + 300, k * ORBIT + 300 + ECLIPSE] as const);
  const witness = playOut(stints, travel, crew, eclipses);
  return { shape, travel, stints, items, restraints, swaps: swapped, witness, eclipses };
}

function drawTravel(random: SeededRandom, count: number): number[][] {
  const at = Array.from({ length: count }, () => [random.upTo(100), random.upTo(30)] as const);
  const far = 1 << 20;
  // 10 m in a minute or two along a handrail; only near places are joined, so that ways bend.
  const time = at.map(([x, y], i) =>
    at.map(([u, w], j) =>
      i === j
        ? 0
        : Math.hypot(x - u, y - w) < 35 || Math.abs(i - j) === 1
          ? 4 + Math.round(Math.hypot(x - u, y - w) * 0.6)
          : far,
    ),
  );
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) {
        const via = (time[i]?.[k] as number) + (time[k]?.[j] as number);
        const row = time[i] as number[];
        if (via < (row[j] as number)) row[j] = via;
      }
    }
  }
  return time;
}

/** Six places in the order of stints for each chain, kept apart from the others. */
function placeChains(random: SeededRandom, count: number, items: number): Map<number, { item: number; step: number }> {
  const links = new Map<number, { item: number; step: number }>();
  for (let item = 0; item < items; item++) {
    const free = Array.from({ length: count }, (_, i) => i).filter((i) => !links.has(i));
    while (free.length > CHAIN.length) free.splice(random.upTo(free.length - 1), 1);
    free.forEach((i, step) => links.set(i, { item, step }));
  }
  return links;
}

/** Everything one after the other as early as it can be, except that idle crew work on: the plan that shows it can be done. */
function playOut(
  stints: readonly DrawnStint[],
  travel: readonly (readonly number[])[],
  crew: number,
  eclipses: readonly (readonly [number, number])[],
): number[] {
  const free = Array.from({ length: crew }, () => ({ at: HATCH_TIME, place: 0 }));
  const taskFree = new Map<number, number>();
  const itemFree = new Map<number, number>();
  const restraintFree = new Map<number, number>();
  return stints.map((stint) => {
    let start = 0;
    for (const person of stint.crew) {
      const { at, place } = free[person] as { at: number; place: number };
      start = Math.max(start, at + (travel[place]?.[stint.from] as number));
    }
    const previous = taskFree.get(stint.task) ?? 0;
    start = Math.max(start, previous);
    if (stint.item !== null) start = Math.max(start, itemFree.get(stint.item) ?? 0);
    if (stint.restraint !== null) start = Math.max(start, restraintFree.get(stint.restraint) ?? 0);
    if (stint.isInEclipse) {
      const window = eclipses.find(([a, b]) => Math.max(a, start) + stint.duration <= b) as readonly [number, number];
      start = Math.max(start, window[0]);
    }
    const end = start + stint.duration;
    for (const person of stint.crew) free[person] = { at: end, place: stint.to };
    taskFree.set(stint.task, end);
    if (stint.item !== null) itemFree.set(stint.item, end);
    if (stint.restraint !== null) restraintFree.set(stint.restraint, end);
    return start;
  });
}
