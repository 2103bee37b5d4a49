/**
 * One lane per arm: it goes from pose to pose in the time of the transfer, empty or with what hangs on it. While a rider
 * stands on the plate it moves only by work that both take part in, so it stands still while somebody gets on or off or
 * works from it. One operator moves one arm at a time.
 */
import { FORBIDDEN, type SequenceMember } from '@handrail/solver/model/model';
import type { Arm, Role, Stint } from '../../campaign/campaign.ts';
import type { EvaDraft, LaneMember } from '../eva-draft.ts';
import type { EvaProblem } from '../eva-problem.ts';
import { cellsUp } from '../grid.ts';
import type { TeamMode } from '../team-mode.ts';
import { LaneTypes } from './lane-types.ts';
import { arrival, itemsOf } from './post-person-lanes.ts';

/** How an arm is at one end of a stay. */
export interface ArmStance {
  readonly pose: string;
  readonly rider: boolean;
  readonly payload: readonly string[];
}

export interface ArmStay {
  readonly role: number;
  readonly start: ArmStance;
  readonly end: ArmStance;
}

export function postArmLanes(draft: EvaDraft): void {
  const byOperator = new Map<string, { readonly arm: string; readonly members: SequenceMember[] }[]>();
  for (const arm of draft.problem.campaign.arms) {
    const members = postLane(draft, arm);
    byOperator.set(arm.operator, [...(byOperator.get(arm.operator) ?? []), { arm: arm.id, members }]);
  }
  for (const [operator, lanes] of byOperator) {
    if (lanes.length < 2) continue;
    const members = lanes.flatMap((lane) =>
      lane.members.map(({ interval }) => ({ interval, startType: 0, endType: 0 })),
    );
    draft.post({
      kind: 'sequence',
      members,
      types: 1,
      transitions: [0],
      first: null,
      last: null,
      transitionTotal: null,
      tag: `operator:${operator}`,
    });
  }
}

function postLane(draft: EvaDraft, arm: Arm): SequenceMember[] {
  const { problem, builder } = draft;
  const types = new LaneTypes<ArmStance>(({ pose, rider, payload }) => JSON.stringify([pose, rider, payload]));
  const lane: LaneMember[] = [];
  const members: SequenceMember[] = [];
  for (const stint of draft.stints.values()) {
    for (const mode of stint.modes) {
      for (const stay of armStays(problem, stint.stint, mode.mode, arm.id)) {
        const interval = draft.roleInterval(stint, mode, stay.role);
        lane.push({ interval, draft: stint, mode: mode.mode, role: stay.role });
        members.push({
          interval,
          startType: types.index(stay.start),
          endType: types.index(stay.end),
        });
      }
    }
  }
  if (lane.length === 0) return [];
  for (const move of problem.past?.moves ?? []) {
    if (move.who !== arm.id) continue;
    const there = types.index({ pose: move.to, rider: false, payload: [...move.carrying].sort() });
    const interval = arrival(draft, move);
    lane.push({ interval, draft: null, mode: null, role: null });
    members.push({ interval, startType: there, endType: there });
  }
  const parked = { pose: problem.armPoses.get(arm.id) ?? arm.startPose, rider: false, payload: [] };
  const start = builder.interval(`${arm.id} at PET 0`, 0, { endMax: 0 });
  const all = [{ interval: start, startType: types.index(parked), endType: types.index(parked) }, ...members];
  draft.lanes.set(arm.id, [{ interval: start, draft: null, mode: null, role: null }, ...lane]);
  const { types: count, transitions } = types.table((from, to) => stanceChange(arm, from, to));
  draft.post({
    kind: 'sequence',
    members: all,
    types: count,
    transitions,
    first: start,
    last: null,
    transitionTotal: null,
    tag: `arm:${arm.id}`,
  });
  return members;
}

/** The arm's part in a stint manned in this way: by a role of its own, or standing still under a rider. */
export function armStays(problem: EvaProblem, stint: Stint, mode: TeamMode, arm: string): readonly ArmStay[] {
  const carried = problem.carried.get(stint.key);
  const rides = riders(stint, arm);
  const stays: ArmStay[] = [];
  for (const [role, { name, at, to }] of stint.roles.entries()) {
    if (name !== 'arm' || mode.assigned[role] !== arm) continue;
    stays.push({
      role,
      start: { pose: at, rider: rides.atStart, payload: itemsOf(carried?.atStart ?? [], role) },
      end: { pose: to, rider: rides.atEnd, payload: itemsOf(carried?.atEnd ?? [], role) },
    });
  }
  for (const { arm: id, pose, role } of mode.standing) {
    if (id !== arm) continue;
    const { startOn, endOn } = stint.roles[role] as Role;
    stays.push({
      role,
      start: { pose, rider: startOn === arm, payload: [] },
      end: { pose, rider: endOn === arm, payload: [] },
    });
  }
  return stays;
}

function riders(stint: Stint, arm: string): { readonly atStart: boolean; readonly atEnd: boolean } {
  const people = stint.roles.filter(({ name }) => name !== 'arm');
  return {
    atStart: people.some(({ startOn }) => startOn === arm),
    atEnd: people.some(({ endOn }) => endOn === arm),
  };
}

function stanceChange(arm: Arm, from: ArmStance, to: ArmStance): number {
  if (from.rider !== to.rider || from.payload.join('\n') !== to.payload.join('\n')) return FORBIDDEN;
  if (from.pose === to.pose) return 0;
  if (from.rider) return FORBIDDEN;
  const hops = armRoute(arm, from.pose, to.pose, from.payload.length > 0);
  return hops === null ? FORBIDDEN : hops.reduce((sum, { seconds }) => sum + cellsUp(seconds), 0);
}

export interface ArmHop {
  readonly from: string;
  readonly to: string;
  readonly seconds: number;
}

/** The quickest chain of transfers; null: no way. A rider never goes along: rides are work of their own. */
export function armRoute(arm: Arm, from: string, to: string, loaded: boolean): readonly ArmHop[] | null {
  const best = new Map<string, { seconds: number; hops: readonly ArmHop[] }>([[from, { seconds: 0, hops: [] }]]);
  const open = new Set([from]);
  while (open.size > 0) {
    const pose = [...open].reduce((a, b) => (secondsTo(best, b) < secondsTo(best, a) ? b : a));
    open.delete(pose);
    if (pose === to) break;
    const here = best.get(pose);
    if (here === undefined) break;
    for (const hop of hopsFrom(arm, pose, loaded)) {
      const seconds = here.seconds + hop.seconds;
      if (seconds >= secondsTo(best, hop.to)) continue;
      best.set(hop.to, { seconds, hops: [...here.hops, hop] });
      open.add(hop.to);
    }
  }
  return best.get(to)?.hops ?? null;
}

function secondsTo(best: ReadonlyMap<string, { readonly seconds: number }>, pose: string): number {
  return best.get(pose)?.seconds ?? Number.POSITIVE_INFINITY;
}

function hopsFrom(arm: Arm, pose: string, loaded: boolean): ArmHop[] {
  return arm.transfers.flatMap(({ from, to, emptyS, loadedS, oneWay }) => {
    const seconds = loaded ? loadedS : emptyS;
    if (seconds === null) return [];
    if (from === pose) return [{ from, to, seconds }];
    return to === pose && !oneWay ? [{ from: to, to: from, seconds }] : [];
  });
}
