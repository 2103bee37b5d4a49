/**
 * One lane per person: stays do not overlap, and between two of them there is time for the way, for getting out of one
 * foot restraint and into the next. On an arm's plate nobody walks: it is left only by work that steps off it or rides. A
 * person with a large item in hand goes straight from the work that took it to the work that gives it away.
 */
import { endOf, startOf } from '@handrail/solver/model/build-model';
import {
  FORBIDDEN,
  type IntervalId,
  type LinearTerm,
  type SequenceMember,
  type VariableId,
} from '@handrail/solver/model/model';
import type { Person, Role, Stint } from '../../campaign/campaign.ts';
import type { EvaDraft, LaneMember } from '../eva-draft.ts';
import { egressTimes, type EvaProblem } from '../eva-problem.ts';
import type { PlannedMove } from '../../timeline/timeline.ts';
import { cellsUp } from '../grid.ts';
import { LaneTypes } from './lane-types.ts';
import { postBridges } from './post-bridges.ts';

/** Where and how a person is at one end of a stay. */
export interface Footing {
  readonly place: string;
  /** Arm id when on its plate. */
  readonly on: string | null;
  readonly restraint: string | null;
  /** Large items in hand, sorted. */
  readonly items: readonly string[];
}

export function postPersonLanes(draft: EvaDraft): void {
  const { problem } = draft;
  for (const person of problem.campaign.people) {
    const crewed = problem.crew.includes(person);
    if (person.role === 'outside' && !crewed) continue;
    postLane(draft, person);
  }
}

function postLane(draft: EvaDraft, person: Person): void {
  const { problem, builder } = draft;
  const types = new LaneTypes<Footing>(footingKey);
  const members: SequenceMember[] = [];
  const lane: LaneMember[] = [];
  const add = (member: LaneMember, start: Footing, end: Footing) => {
    lane.push(member);
    members.push({ interval: member.interval, startType: types.index(start), endType: types.index(end) });
  };
  const hatch = hatchFooting(problem);
  const { egress = null, ingress = null } = draft.passages.get(person.id) ?? {};
  const plain = { draft: null, mode: null, role: null };
  if (egress !== null) add({ ...plain, interval: egress }, hatch, hatch);
  for (const stint of draft.stints.values()) {
    for (const mode of stint.modes) {
      for (const [index, role] of stint.stint.roles.entries()) {
        if (mode.mode.assigned[index] !== person.id) continue;
        const interval = draft.roleInterval(stint, mode, index);
        add(
          { interval, draft: stint, mode: mode.mode, role: index },
          startFooting(problem, stint.stint, role, index),
          endFooting(problem, stint.stint, role, index),
        );
        if (ingress === null && draft.closeHatch !== null && person.role === 'outside') {
          draft.before(endOf(interval), startOf(draft.closeHatch), 0, null);
        }
      }
    }
  }
  for (const move of problem.past?.moves ?? []) {
    if (move.who !== person.id) continue;
    const there = { place: move.to, on: null, restraint: null, items: [...move.carrying].sort() };
    add({ ...plain, interval: arrival(draft, move) }, there, there);
  }
  if (ingress !== null) add({ ...plain, interval: ingress }, hatch, hatch);
  if (lane.length === 0) return;
  draft.lanes.set(person.id, lane);
  const moves = person.role === 'outside';
  const { types: count, transitions } = types.table((from, to) =>
    moves ? footingChange(problem, person, from, to) : 0,
  );
  const total = moves && lane.length > 1 ? builder.variable(`${person.id} travel`, 0, problem.horizon) : null;
  if (total !== null) draft.travelTotals.push(total);
  if (total !== null) postBridges(draft, person, total);
  if (total !== null && ingress !== null) postLoad(draft, person, lane, egress, ingress, total);
  draft.post({
    kind: 'sequence',
    members,
    types: count,
    transitions,
    first: egress,
    last: ingress,
    transitionTotal: total,
    tag: `lane:${person.id}`,
  });
}

/** The end of a move under way: an instant in the lane. */
export function arrival(draft: EvaDraft, move: PlannedMove): IntervalId {
  const cell = cellsUp(move.endS);
  const id = draft.builder.interval(`${move.who} arrives at ${move.to}`, 0, { startMin: cell, endMax: cell });
  draft.arrivals.set(id, move.to);
  return id;
}

/** Implied by the sequence, and a better bound on the finish: out + all stays + all ways ≤ in. */
function postLoad(
  draft: EvaDraft,
  person: Person,
  lane: readonly LaneMember[],
  egress: IntervalId | null,
  ingress: IntervalId,
  travel: VariableId,
): void {
  const { builder } = draft;
  const terms: LinearTerm[] = [
    { coefficient: 1, variable: travel },
    { coefficient: -1, variable: builder.intervalAt(ingress).start },
  ];
  let constant = egress === null ? 0 : (egressTimes(draft.problem).get(person.id)?.[1] ?? 0);
  for (const { interval } of lane) {
    const { duration, presence } = builder.intervalAt(interval);
    if (interval === egress || interval === ingress || presence === null) continue;
    if (typeof duration !== 'number') continue;
    const length = duration;
    if (presence.holds === 0) constant += length;
    terms.push({ coefficient: presence.holds === 1 ? length : -length, variable: presence.variable });
  }
  const merged = mergeTerms(terms);
  builder.post({
    kind: 'linear',
    expression: { terms: merged, constant },
    bound: 0,
    when: [],
    tag: `lane:${person.id}`,
  });
}

function mergeTerms(terms: readonly LinearTerm[]): LinearTerm[] {
  const sums = new Map<number, number>();
  for (const { coefficient, variable } of terms) sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  return [...sums].map(([variable, coefficient]) => ({ coefficient, variable }));
}

export function hatchFooting(problem: EvaProblem): Footing {
  return { place: problem.campaign.vehicle.hatch ?? 'outside', on: null, restraint: null, items: [] };
}

export function startFooting(problem: EvaProblem, stint: Stint, role: Role, index: number): Footing {
  const carried = problem.carried.get(stint.key)?.atStart ?? [];
  return { place: role.at, on: role.startOn, restraint: role.restraint, items: itemsOf(carried, index) };
}

export function endFooting(problem: EvaProblem, stint: Stint, role: Role, index: number): Footing {
  const carried = problem.carried.get(stint.key)?.atEnd ?? [];
  return { place: role.to, on: role.endOn, restraint: role.restraint, items: itemsOf(carried, index) };
}

export function itemsOf(
  carried: readonly { readonly role: number; readonly item: string }[],
  index: number,
): readonly string[] {
  return carried
    .filter(({ role }) => role === index)
    .map(({ item }) => item)
    .sort();
}

/** Seconds to leave one footing, walk and settle into the next, by parts; null: never directly. */
export function footingParts(
  problem: EvaProblem,
  person: Person,
  from: Footing,
  to: Footing,
): { readonly leaveS: number; readonly travelS: number; readonly settleS: number } | null {
  if (from.items.join('\n') !== to.items.join('\n') || from.on !== to.on) return null;
  if (from.on !== null && from.place !== to.place) return null;
  const travelS = from.place === to.place ? 0 : problem.travel.secondsBetween(person, from.place, to.place, from.items);
  if (travelS === null) return null;
  const stays = from.restraint === to.restraint && from.place === to.place;
  const { restraintEgressS, restraintIngressS } = problem.campaign.limits;
  return {
    leaveS: stays || from.restraint === null ? 0 : (restraintEgressS ?? 0) * person.pace,
    travelS,
    settleS: stays || to.restraint === null ? 0 : (restraintIngressS ?? 0) * person.pace,
  };
}

function footingChange(problem: EvaProblem, person: Person, from: Footing, to: Footing): number {
  const parts = footingParts(problem, person, from, to);
  return parts === null ? FORBIDDEN : cellsUp(parts.leaveS) + cellsUp(parts.travelS) + cellsUp(parts.settleS);
}

function footingKey({ place, on, restraint, items }: Footing): string {
  return JSON.stringify([place, on, restraint, items]);
}
