/**
 * The best plan of a very small EVA by trying everything: which tasks, who, and each start minute by minute. It reads the
 * same campaign and shares no code with the scheduler. One-step and two-step stints, whole minutes, two people, no arms.
 */
import type { Campaign, Role, Stint, Task } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { EGRESS_MS } from './small-campaign.ts';

export interface BestPlan {
  readonly tasks: readonly string[];
  readonly bothInMin: number;
  readonly travelMin: number;
}

interface Placed {
  readonly stint: Stint;
  readonly who: readonly string[];
  readonly start: number;
  readonly end: number;
  /** Minute at which each step boundary falls. */
  readonly marks: readonly number[];
}

export function exhaustivePlan(campaign: Campaign, hardware: HardwareModel, wallMin: number): BestPlan | null {
  const tasks = [...campaign.tasks].sort((a, b) => a.rank - b.rank);
  // Subsets from the best by rank to the worst: the first with a plan is the one.
  for (let left = 0; left < 2 ** tasks.length; left++) {
    const chosen = tasks.filter((_, i) => (left & (1 << (tasks.length - 1 - i))) === 0);
    const found = bestOf(campaign, hardware, chosen, wallMin);
    if (found !== null) return { tasks: chosen.map(({ id }) => id), ...found };
  }
  return null;
}

function bestOf(campaign: Campaign, hardware: HardwareModel, tasks: readonly Task[], wallMin: number) {
  const stints = tasks.flatMap((task) => task.stints);
  const placed: Placed[] = [];
  let best: { bothInMin: number; travelMin: number } | null = null;
  const visit = (index: number) => {
    const stint = stints[index];
    if (stint === undefined) {
      const figures = judge(campaign, hardware, tasks, placed);
      if (figures === null || figures.bothInMin > wallMin) return;
      if (
        best === null ||
        figures.bothInMin < best.bothInMin ||
        (figures.bothInMin === best.bothInMin && figures.travelMin < best.travelMin)
      ) {
        best = figures;
      }
      return;
    }
    for (const who of teams(stint)) {
      const lengths = stepLengths(campaign, stint, who);
      const length = lengths.reduce((sum, minutes) => sum + minutes, 0);
      for (let start = 0; start + length <= wallMin; start++) {
        const marks = [start];
        for (const minutes of lengths) marks.push((marks.at(-1) as number) + minutes);
        const next = { stint, who, start, end: start + length, marks };
        if (placed.some((other) => clash(other, next))) continue;
        placed.push(next);
        visit(index + 1);
        placed.pop();
      }
    }
  };
  visit(0);
  return best as { bothInMin: number; travelMin: number } | null;
}

function teams(stint: Stint): string[][] {
  let found: string[][] = [[]];
  for (const role of stint.roles) {
    found = found.flatMap((team) => role.candidates.filter((id) => !team.includes(id)).map((id) => [...team, id]));
  }
  return found;
}

function paceOf(campaign: Campaign, id: string): number {
  return campaign.people.find((person) => person.id === id)?.pace ?? 1;
}

/** Each step at the pace of the slowest who takes part in it. */
function stepLengths(campaign: Campaign, stint: Stint, who: readonly string[]): number[] {
  return stint.duration.stepsS.map((stepS, step) => {
    const there = who.filter((_, i) => {
      const role = stint.roles[i] as Role;
      return role.fromStep <= step && step < role.toStep;
    });
    return (stepS / 60) * Math.max(...there.map((id) => paceOf(campaign, id)));
  });
}

interface Part {
  readonly who: string;
  readonly role: Role;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

function partsOf({ stint, who, marks }: Placed): Part[] {
  return stint.roles.map((role, index) => ({
    who: who[index] as string,
    role,
    index,
    from: marks[role.fromStep] as number,
    to: marks[role.toStep] as number,
  }));
}

function clash(a: Placed, b: Placed): boolean {
  if (a.stint.voice && b.stint.voice && a.start < b.end && b.start < a.end) return true;
  const both = partsOf(a).some((x) =>
    partsOf(b).some((y) => {
      const sharesRestraint = x.role.restraint !== null && x.role.restraint === y.role.restraint;
      return (x.who === y.who || sharesRestraint) && x.from < y.to && y.from < x.to;
    }),
  );
  return both || [...pairOrders(a, b), ...pairOrders(b, a)].some((broken) => broken);
}

function* pairOrders(a: Placed, b: Placed): Generator<boolean> {
  for (const { stint, leastS, mostS } of b.stint.after) {
    if (stint !== a.stint.key) continue;
    yield b.start < a.end + leastS / 60;
    yield mostS !== null && b.start > a.end + mostS / 60;
  }
}

function judge(campaign: Campaign, hardware: HardwareModel, tasks: readonly Task[], placed: readonly Placed[]) {
  for (const task of tasks) {
    if (task.order === 'written' && !keepsWrittenOrder(task, placed)) return null;
  }
  if (!placed.every((stay) => keepsWindows(campaign, stay))) return null;
  for (const variable of hardware.variables.keys()) if (!keepsState(hardware, variable, placed)) return null;
  if (!keepsClocks(campaign, hardware, placed)) return null;
  return walk(campaign, hardware, placed);
}

/** Of each named body, the parts it has in the task follow one another as the text does. */
function keepsWrittenOrder(task: Task, placed: readonly Placed[]): boolean {
  const free = new Map<string, number>();
  for (const stint of task.stints) {
    const stay = placed.find((one) => one.stint === stint);
    for (const { who, role, from, to } of stay === undefined ? [] : partsOf(stay)) {
      if (role.candidates.length !== 1) continue;
      if (from < (free.get(who) ?? 0)) return false;
      free.set(who, to);
    }
  }
  return true;
}

function keepsWindows(campaign: Campaign, { stint, start, end }: Placed): boolean {
  return stint.windowUses.every((use) => {
    const intervals = campaign.windows.find(({ id }) => id === use.window)?.intervals ?? [];
    const minutes = intervals.map((edge) => edge.map((ms) => (ms - EGRESS_MS) / 60_000));
    const inside = minutes.some(([a, b]) => start >= (a as number) && end <= (b as number));
    const meets = minutes.some(([a, b]) => start < (b as number) && end > (a as number));
    return use.mode === 'inside' ? inside : !meets;
  });
}

interface Touch {
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

function keepsState(hardware: HardwareModel, variable: string, placed: readonly Placed[]): boolean {
  const writes: (Touch & { value: string })[] = [];
  const needs: (Touch & { allowed: readonly string[] })[] = [];
  for (const { stint, start, end, who, marks } of placed) {
    const named = (value: string) => value.replace(/^role:(\d)$/, (_, role) => `person:${who[Number(role)]}`);
    const effects = hardware.effects.get(stint.key);
    const lastStep = (marks.at(-1) as number) - (marks.at(-2) as number);
    const leave = effects?.leaves.find((candidate) => candidate.variable === variable);
    if (leave !== undefined) writes.push({ key: stint.key, from: end - lastStep, to: end, value: named(leave.value) });
    for (const need of effects?.needs ?? []) {
      if (need.variable !== variable) continue;
      // What the stint itself is going to write is kept for it until it begins to.
      const to = leave !== undefined ? end - lastStep : need.when === 'during' ? end : start;
      needs.push({ key: stint.key, from: start, to, allowed: need.allowed.map(named) });
    }
  }
  const overlaps = (a: Touch, b: Touch) => a.key !== b.key && a.from < b.to && b.from < a.to;
  if (writes.some((a) => writes.some((b) => overlaps(a, b)))) return false;
  if (writes.some((a) => needs.some((b) => overlaps(a, b)))) return false;
  const initial = hardware.variables.get(variable)?.initial ?? 'unknown';
  return needs.every((need) => {
    const before = writes.filter(({ to }) => to <= need.from).sort((a, b) => b.to - a.to);
    return need.allowed.includes(before[0]?.value ?? initial);
  });
}

function keepsClocks(campaign: Campaign, hardware: HardwareModel, placed: readonly Placed[]): boolean {
  /** When the variable takes one of the values, having had another one. */
  const changes = (variable: string, values: readonly string[]) => {
    let value = hardware.variables.get(variable)?.initial ?? 'unknown';
    const at: number[] = [];
    for (const { stint, end } of [...placed].sort((a, b) => a.end - b.end)) {
      const leave = hardware.effects.get(stint.key)?.leaves.find((one) => one.variable === variable);
      if (leave === undefined) continue;
      if (values.includes(leave.value) && !values.includes(value)) at.push(end);
      value = leave.value;
    }
    return at;
  };
  return campaign.clocks.every(({ start, stop, limitS }) =>
    changes(start.variable, start.values).every((from) =>
      changes(stop.variable, stop.values).some((to) => to >= from && to - from <= limitS / 60),
    ),
  );
}

/** Lanes, ways and the hatch: when both are in and how long everybody walks. null: somebody cannot be there in time. */
function walk(
  campaign: Campaign,
  hardware: HardwareModel,
  placed: readonly Placed[],
): { bothInMin: number; travelMin: number } | null {
  const [eva] = campaign.evas;
  if (eva === undefined) return null;
  const hatch = campaign.vehicle.hatch as string;
  let out = 0;
  let travelMin = 0;
  const back = new Map<string, number>();
  for (const { person, durationS } of eva.egress) {
    out += durationS / 60;
    let free = out;
    let at: Standing = { place: hatch, restraint: null, items: '' };
    let broken = false;
    const pace = paceOf(campaign, person);
    const stays = placed
      .flatMap((stay) => partsOf(stay).map((part) => ({ stint: stay.stint, ...part })))
      .filter(({ who }) => who === person)
      .sort((a, b) => a.from - b.from);
    const go = (to: Standing) => {
      const same = at.place === to.place && at.restraint === to.restraint;
      const { restraintEgressS, restraintIngressS } = campaign.limits;
      const swap = same
        ? 0
        : (at.restraint === null ? 0 : (restraintEgressS ?? 0)) +
          (to.restraint === null ? 0 : (restraintIngressS ?? 0));
      const laden = at.items === '' ? 1 : LADEN;
      if (at.items !== to.items) broken = true;
      const needed = distance(campaign, at.place, to.place) * laden * pace + (swap / 60) * pace;
      travelMin += needed;
      free += needed;
    };
    for (const { stint, from, to, role, index: i } of stays) {
      const effects = hardware.effects.get(stint.key);
      const items = (carried: readonly { role: number; item: string }[] | undefined) =>
        (carried ?? []).flatMap(({ role: index, item }) => (index === i ? [item] : [])).join();
      go({ place: role.at, restraint: role.restraint, items: items(effects?.carriesIn) });
      if (from < free) return null;
      free = to;
      at = { place: role.to, restraint: role.restraint, items: items(effects?.carriesOut) };
    }
    go({ place: hatch, restraint: null, items: '' });
    if (broken) return null;
    back.set(person, free);
  }
  let inside = 0;
  for (const { person, durationS } of eva.ingress) inside = Math.max(inside, back.get(person) ?? 0) + durationS / 60;
  return { bothInMin: inside + eva.closeHatchS / 60, travelMin };
}

interface Standing {
  readonly place: string;
  readonly restraint: string | null;
  readonly items: string;
}
/** The one load class of these campaigns. */
const LADEN = 2;

/** Minutes over the rails, by relaxing until nothing changes. */
function distance(campaign: Campaign, from: string, to: string): number {
  const best = new Map<string, number>([[from, 0]]);
  for (let changed = true; changed; ) {
    changed = false;
    for (const { from: a, to: b, durationS } of campaign.vehicle.rails) {
      for (const [x, y] of [
        [a, b],
        [b, a],
      ] as const) {
        const reached = (best.get(x) ?? Number.POSITIVE_INFINITY) + durationS / 60;
        if (reached < (best.get(y) ?? Number.POSITIVE_INFINITY)) {
          best.set(y, reached);
          changed = true;
        }
      }
    }
  }
  return best.get(to) ?? Number.POSITIVE_INFINITY;
}
