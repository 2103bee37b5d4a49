/**
 * What follows from the stints of an EVA by rote: who walks where between them, when joins release, how long requests are in
 * force. After a hand edit these are laid anew, so that only what the hand set is set.
 *
 * People leave as soon as the stay before is over and the restraint is left; times are rounded up to the planner's 10 s.
 */
import { stepStart, stintsByKey } from '../person-course.ts';
import type { EvaTimeline, PlannedMove, PlannedStint, RequestHold } from '../timeline.ts';
import type { Person, Role } from '../../campaign/campaign.ts';
import { travelTable } from '../../vehicle/travel-table.ts';
import type { Valuation } from '../../vehicle/rail-network.ts';
import type { EditGround } from './hand-edit.ts';

const CELL_S = 10;

interface Stay {
  /** Stint key, or the passage: tells which stays are the same before and after an edit. */
  readonly id: string;
  readonly startS: number;
  readonly endS: number;
  readonly from: string;
  readonly to: string;
  readonly restraint: string | null;
  readonly onAtStart: string | null;
  readonly onAtEnd: string | null;
  readonly itemsOut: readonly string[];
  readonly itemsIn: readonly string[];
}

/**
 * @param was the EVA before the edit: requests keep covering the stints that they covered there
 * @param people whose ways are laid anew; the others' and the arms' transfers stay as they are
 * @param asked a place to go by before one stay, or none of those that were there
 */
export function layLanes(
  ground: EditGround,
  was: EvaTimeline,
  now: EvaTimeline,
  people: ReadonlySet<string>,
  asked: AskedDetour | null = null,
): EvaTimeline {
  const relaid = ground.campaign.people.filter(({ id, role }) => role === 'outside' && people.has(id));
  const walkers = new Set(relaid.map(({ id }) => id));
  const moves = [
    ...now.moves.filter(({ who }) => !walkers.has(who)),
    ...relaid.flatMap((person) => ways(ground, now, person, detours(ground, was, person.id, asked))),
  ].sort((a, b) => a.startS - b.startS || (a.who < b.who ? -1 : 1));
  const planned = new Map(now.stints.map((stint) => [stint.stint, stint]));
  const joins = ground.campaign.tasks.flatMap((task) =>
    task.joins.flatMap((join) => {
      const [releases, waits] = [planned.get(join.releases), planned.get(join.waits)];
      if (releases === undefined || waits === undefined) return [];
      return [{ join: join.id, releasedS: releases.endS, waitsUntilS: waits.startS }];
    }),
  );
  return { ...now, moves, joins, holds: now.holds.map((hold) => coverAgain(ground, was, now, hold)) };
}

/** A way led over a place, or straight again. */
export interface AskedDetour {
  readonly person: string;
  /** Stint and index of the role that the person comes to: "task/stint#0". */
  readonly stay: string;
  readonly by: string | null;
}

/** Places in between that the moves of an EVA make, by the stays that they lie between: the way goes on leading over them whatever else is moved. */
function detours(
  ground: EditGround,
  eva: EvaTimeline,
  person: string,
  asked: AskedDetour | null,
): ReadonlyMap<string, readonly string[]> {
  const stays = staysOf(ground, eva, person);
  const found = new Map<string, readonly string[]>();
  for (const [index, next] of stays.entries()) {
    const before = stays[index - 1];
    if (before === undefined) continue;
    if (asked?.person === person && asked.stay === next.id) {
      if (asked.by !== null) found.set(gapKey(before, next), [asked.by]);
      continue;
    }
    const between = eva.moves
      .filter(({ who, startS }) => who === person && startS >= before.endS && startS < next.endS)
      .toSorted((a, b) => a.startS - b.startS);
    if (between.length > 1)
      found.set(
        gapKey(before, next),
        between.slice(0, -1).map(({ to }) => to),
      );
  }
  return found;
}

function gapKey(before: Stay, next: Stay): string {
  return `${before.id}>${next.id}`;
}

function ways(
  ground: EditGround,
  eva: EvaTimeline,
  person: Person,
  over: ReadonlyMap<string, readonly string[]>,
): PlannedMove[] {
  const { campaign } = ground;
  // Without a vehicle there are no places to go between.
  if (campaign.vehicle.hatch === null) return [];
  const stays = staysOf(ground, eva, person.id);
  const travel = travelTable(campaign, { valuation: lasting(ground, eva), person: person.id });
  const moves: PlannedMove[] = [];
  for (const [index, next] of stays.entries()) {
    const before = stays[index - 1];
    if (before === undefined) continue;
    const via = over.get(gapKey(before, next)) ?? [];
    if (before.to === next.from && via.length === 0) continue;
    // Who rides the arm goes where the arm goes.
    if (before.onAtEnd !== null && next.onAtStart === before.onAtEnd) continue;
    const carrying = [...new Set([...before.itemsOut, ...next.itemsIn])].sort();
    const load = heaviest(ground, carrying);
    let from = before.to;
    let startS =
      before.endS + (before.restraint === null ? 0 : cellsUp((campaign.limits.restraintEgressS ?? 0) * person.pace));
    for (const to of [...via, next.from]) {
      if (to === from) continue;
      const route = travel.routeBetween(from, to, load);
      // Where no way is known the move stands with no time of its own: the replay says that it has no rails.
      const endS = startS + cellsUp(travel.secondsBetween(from, to, load, person.pace) ?? 0);
      const path = route?.path ?? [from, to];
      moves.push({ who: person.id, from, to, startS, endS, path, anchor: route?.anchor ?? null, carrying });
      from = to;
      startS = endS;
    }
  }
  return moves;
}

function staysOf({ campaign, hardware }: EditGround, eva: EvaTimeline, person: string): readonly Stay[] {
  const hatch = campaign.vehicle.hatch ?? 'hatch';
  const plain = { restraint: null, onAtStart: null, onAtEnd: null, itemsIn: [], itemsOut: [] };
  const stays: Stay[] = eva.passages
    .filter((passage) => passage.person === person)
    .map(({ kind, startS, endS }) => ({ ...plain, id: kind, startS, endS, from: hatch, to: hatch }));
  const stints = stintsByKey(campaign);
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    const effects = hardware.effects.get(planned.stint);
    for (const [index, role] of (stint?.roles ?? []).entries()) {
      if (planned.assigned[index] !== person) continue;
      const items = (
        list: readonly { readonly role: number; readonly item: string }[] | undefined,
      ): readonly string[] => (list ?? []).filter((one) => one.role === index).map(({ item }) => item);
      stays.push({
        id: `${planned.stint}#${index}`,
        startS: stepStart(planned, role.fromStep),
        endS: roleEnd(planned, role),
        from: role.at,
        to: role.to,
        restraint: role.restraint,
        onAtStart: role.startOn,
        onAtEnd: role.endOn,
        itemsIn: items(effects?.carriesIn),
        itemsOut: items(effects?.carriesOut),
      });
    }
  }
  return stays.sort((a, b) => a.startS - b.startS || a.endS - b.endS);
}

function roleEnd(planned: PlannedStint, role: Role): number {
  return role.toStep >= planned.stepEndsS.length ? planned.endS : (planned.stepEndsS[role.toStep - 1] ?? planned.endS);
}

/** Rails that depend on a state are ways only where no stint of this EVA and no event changes that state. */
function lasting({ campaign, hardware }: EditGround, eva: EvaTimeline): Valuation {
  const values = new Map([...hardware.variables.values()].map(({ id, initial }) => [id, initial] as const));
  for (const planned of eva.stints)
    for (const leave of hardware.effects.get(planned.stint)?.leaves ?? []) values.delete(leave.variable);
  for (const event of campaign.events) {
    for (const leave of event.leaves) {
      if (event.atUtcMs <= eva.petZeroUtcMs) values.set(leave.variable, leave.value);
      else values.delete(leave.variable);
    }
  }
  return values;
}

function heaviest({ campaign }: EditGround, items: readonly string[]): string | null {
  const loads = items.flatMap((item) => campaign.hardware.find(({ id }) => id === item)?.loadClass ?? []);
  const classes = campaign.vehicle.loadClasses.filter(({ id }) => loads.includes(id));
  return classes.toSorted((a, b) => b.factor - a.factor)[0]?.id ?? null;
}

function coverAgain(ground: EditGround, was: EvaTimeline, now: EvaTimeline, hold: RequestHold): RequestHold {
  const request = ground.campaign.requests.find(({ id }) => id === hold.request);
  const usesOf = (eva: EvaTimeline) => eva.stints.flatMap((planned) => requestUses(ground, planned, hold.request));
  const covered = usesOf(was).filter(({ startS, endS }) => hold.firstUseS <= startS && endS <= hold.lastUseS);
  const users = new Set(covered.map(({ stint }) => stint));
  const uses = usesOf(now).filter(({ stint }) => users.has(stint));
  const firstUseS = Math.min(...uses.map(({ startS }) => startS));
  const lastUseS = Math.max(...uses.map(({ endS }) => endS));
  const isSame =
    firstUseS === Math.min(...covered.map(({ startS }) => startS)) &&
    lastUseS === Math.max(...covered.map(({ endS }) => endS));
  if (request === undefined || uses.length === 0 || isSame) return hold;
  return {
    request: hold.request,
    askS: firstUseS - request.verifyS - request.setLeadS,
    verifiedS: firstUseS,
    firstUseS,
    lastUseS,
    clearedS: lastUseS + request.clearS,
  };
}

/** Over which time a stint wants this request in force: the steps that the hardware demands it for, or all of it. */
function requestUses(
  { campaign, hardware }: EditGround,
  planned: PlannedStint,
  request: string,
): readonly { readonly stint: string; readonly startS: number; readonly endS: number }[] {
  const { stint } = planned;
  const isUnder = stintsByKey(campaign).get(stint)?.under.includes(request) ?? false;
  const whole = isUnder ? [{ stint, startS: planned.startS, endS: planned.endS }] : [];
  const controls = hardware.effects.get(stint)?.controls.filter((control) => control.request === request) ?? [];
  return [
    ...whole,
    ...controls.map(({ fromStep, toStep }) => ({
      stint,
      startS: stepStart(planned, fromStep),
      endS: toStep >= planned.stepEndsS.length ? planned.endS : (planned.stepEndsS[toStep - 1] ?? planned.endS),
    })),
  ];
}

function cellsUp(seconds: number): number {
  return Math.ceil(seconds / CELL_S - 1e-9) * CELL_S;
}
