/**
 * Moves between neighbouring stays of each lane. A person leaves as soon as the stay before is over and the restraint is
 * left, and waits at the next place; an arm likewise goes as soon as it is free. Leaving late would look the same to the
 * model; leaving early keeps the waiting where the next work is, and is what crews do (common practice).
 */
import type { Arm, Person, Role } from '../campaign/campaign.ts';
import type { PlannedMove } from '../timeline/timeline.ts';
import type { LaneMember } from './eva-draft.ts';
import type { EvaModel } from './eva-model.ts';
import type { EvaProblem } from './eva-problem.ts';
import { CELL_S, cellsUp, secondsOf } from './grid.ts';
import { armRoute, armStays, type ArmStance } from './post/post-arm-lanes.ts';
import { endFooting, type Footing, footingParts, hatchFooting, startFooting } from './post/post-person-lanes.ts';
import type { SolutionReader } from './solution-reader.ts';

export function readMoves(evaModel: EvaModel, reader: SolutionReader): PlannedMove[] {
  const { draft, problem } = evaModel;
  const moves: PlannedMove[] = (problem.past?.moves ?? []).filter(({ who }) => draft.lanes.has(who));
  for (const [id, lane] of draft.lanes) {
    const stays = lane
      .filter(({ interval }) => reader.isPresent(interval))
      .sort(
        (a, b) =>
          reader.startS(a.interval) - reader.startS(b.interval) || reader.endS(a.interval) - reader.endS(b.interval),
      );
    const person = problem.campaign.people.find((candidate) => candidate.id === id);
    const arm = problem.campaign.arms.find((candidate) => candidate.id === id);
    if (person?.role === 'outside') moves.push(...personMoves(evaModel, reader, person, stays));
    else if (arm !== undefined) moves.push(...armMoves(evaModel, reader, arm, stays));
  }
  return moves.sort((a, b) => a.startS - b.startS || (a.who < b.who ? -1 : 1));
}

function* personMoves(
  { problem, draft }: EvaModel,
  reader: SolutionReader,
  person: Person,
  stays: readonly LaneMember[],
): Generator<PlannedMove> {
  const footing = (stay: LaneMember, at: 'start' | 'end'): Footing => {
    const arrived = draft.arrivals.get(stay.interval);
    if (arrived !== undefined)
      return { ...hatchFooting(problem), place: arrived, items: carriedTo(problem, person.id) };
    if (stay.draft === null || stay.role === null) return hatchFooting(problem);
    const role = stay.draft.stint.roles[stay.role] as Role;
    return (at === 'start' ? startFooting : endFooting)(problem, stay.draft.stint, role, stay.role);
  };
  for (let i = 1; i < stays.length; i++) {
    const before = stays[i - 1] as LaneMember;
    if (draft.arrivals.has((stays[i] as LaneMember).interval)) continue;
    const from = footing(before, 'end');
    const to = footing(stays[i] as LaneMember, 'start');
    const parts = footingParts(problem, person, from, to);
    if (parts === null || from.place === to.place) continue;
    const startS = reader.endS(before.interval) + secondsOf(cellsUp(parts.leaveS));
    const { path, anchor } = problem.travel.routeBetween(person, from.place, to.place, from.items);
    const endS = startS + secondsOf(cellsUp(parts.travelS));
    yield { who: person.id, from: from.place, to: to.place, startS, endS, path, anchor, carrying: from.items };
  }
}

function* armMoves(
  { problem, draft }: EvaModel,
  reader: SolutionReader,
  arm: Arm,
  stays: readonly LaneMember[],
): Generator<PlannedMove> {
  const parked = { pose: problem.armPoses.get(arm.id) ?? arm.startPose, rider: false, payload: [] };
  const stance = (stay: LaneMember, at: 'start' | 'end'): ArmStance => {
    const arrived = draft.arrivals.get(stay.interval);
    if (arrived !== undefined) return { ...parked, pose: arrived, payload: carriedTo(problem, arm.id) };
    if (stay.draft === null || stay.mode === null) return parked;
    const stays = armStays(draft.problem, stay.draft.stint, stay.mode, arm.id);
    return stays.find(({ role }) => role === stay.role)?.[at] ?? parked;
  };
  for (let i = 1; i < stays.length; i++) {
    const before = stays[i - 1] as LaneMember;
    if (draft.arrivals.has((stays[i] as LaneMember).interval)) continue;
    const from = stance(before, 'end');
    const to = stance(stays[i] as LaneMember, 'start');
    let startS = reader.endS(before.interval);
    for (const hop of armRoute(arm, from.pose, to.pose, from.payload.length > 0) ?? []) {
      const endS = startS + cellsUp(hop.seconds) * CELL_S;
      const path = [hop.from, hop.to];
      yield { who: arm.id, from: hop.from, to: hop.to, startS, endS, path, anchor: null, carrying: from.payload };
      startS = endS;
    }
  }
}

function carriedTo(problem: EvaProblem, who: string): readonly string[] {
  const move = problem.past?.moves.find((candidate) => candidate.who === who);
  return [...(move?.carrying ?? [])].sort();
}
