import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Arm } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';
import type { StateHistory } from '../states/state-history.ts';
import { type Doing, endsOf, type Lane, nameOf } from './lane.ts';
import { itemsInHand } from './rails.ts';

/**
 * Arms go from pose to pose in the time of their transfers, start where they ended, carry a rider only by work that both take
 * part in, and stand at a rider's place while somebody boards, leaves or works from the plate.
 */
export function armsGoAsTheyCan(context: ReplayContext, history: StateHistory, lanes: readonly Lane[]): Finding[] {
  const findings: Finding[] = [];
  const poses = new Map(context.campaign.arms.map((arm) => [arm.id, arm.startPose]));
  for (const { eva } of context.flown) {
    const inEva = lanes.filter((lane) => lane.eva === eva.id);
    for (const arm of context.campaign.arms) {
      const lane = inEva.find((one) => one.who === arm.id);
      const startPose = poses.get(arm.id) ?? arm.startPose;
      findings.push(...riders(context, inEva, lane, arm, startPose));
      if (lane === undefined) continue;
      findings.push(...walk(context, history, inEva, lane, arm, startPose));
      const last = lane.doings.at(-1);
      if (last !== undefined) poses.set(arm.id, endsOf(last, context.hatch).to ?? startPose);
    }
  }
  return findings;
}

function walk(
  context: ReplayContext,
  history: StateHistory,
  lanes: readonly Lane[],
  lane: Lane,
  arm: Arm,
  startPose: string,
): Finding[] {
  const findings: Finding[] = [];
  let pose = startPose;
  for (const doing of lane.doings) {
    const { from, to } = endsOf(doing, context.hatch);
    const where = {
      eva: lane.eva,
      person: arm.id,
      petS: doing.startS,
      stint: doing.kind === 'stint' ? doing.placed.stint.key : null,
      span: doing.kind === 'stint' ? doing.role.span : arm.span,
    };
    if (from !== pose) {
      findings.push(
        noticed('replay/arm-starts-where-it-ended', {
          ...where,
          title: `${arm.id} starts ${nameOf(doing)} where it is not`,
          why: `it starts at ${from ?? 'nowhere'} at PET ${formatPet(doing.startS)}; the arm is at ${pose}`,
          mend: `plan the transfer from ${pose} to ${from ?? ''}`,
        }),
      );
    }
    const ms = lane.plan.petZeroUtcMs + doing.startS * 1000;
    const payload = itemsInHand(context, history, arm.id, ms);
    const rider = riderAt(lanes, arm.id, doing);
    const aboard = doing.kind === 'stint' && doing.placed.stint.roles.some((role) => role.startOn === arm.id);
    if (doing.kind === 'move' && rider !== null) {
      findings.push(
        noticed('replay/arm-carries-a-rider-only-by-work', {
          ...where,
          title: `${arm.id} moves with ${rider} on its plate and no work that both take part in`,
          why: `${nameOf(doing)} ${petSpan(doing.startS, doing.endS)}`,
          mend: 'plan it as a ride of both',
        }),
      );
    }
    if (from !== null && to !== null && from !== to) {
      const loaded = payload.length > 0 || rider !== null || aboard;
      const path = doing.kind === 'move' && doing.move.path.length > 1 ? doing.move.path : [from, to];
      let needS = 0;
      for (let at = 1; at < path.length; at++) needS += chainS(arm, path[at - 1] as string, path[at] as string, loaded);
      const takesS = doing.endS - doing.startS;
      if (path[0] !== from || path.at(-1) !== to || takesS < needS - 1e-6) {
        findings.push(
          noticed('replay/arm-transfers-take-their-time', {
            ...where,
            title: `${arm.id} goes from ${from} to ${to} faster than it can`,
            why: Number.isFinite(needS)
              ? `planned ${formatDuration(takesS)}; ${path.join(' → ')} takes ${formatDuration(needS)} ${loaded ? 'loaded' : 'empty'}`
              : `no transfers lead ${path.join(' → ')} ${loaded ? 'loaded' : 'empty'}`,
            mend: Number.isFinite(needS) ? `allow ${formatDuration(needS)}` : 'go by another pose',
          }),
        );
      }
    }
    pose = to ?? pose;
  }
  return findings;
}

/** Where a rider boards, works from the plate or leaves it, the plate is at their place and stands still. */
function riders(
  context: ReplayContext,
  lanes: readonly Lane[],
  armLane: Lane | undefined,
  arm: Arm,
  startPose: string,
): Finding[] {
  const placeOf = new Map(arm.poses.map((pose) => [pose.id, pose.place]));
  const findings: Finding[] = [];
  for (const lane of lanes) {
    if (!context.people.has(lane.who)) continue;
    for (const doing of lane.doings) {
      if (doing.kind !== 'stint') continue;
      const { role } = doing;
      if (role.startOn !== arm.id && role.endOn !== arm.id) continue;
      const own = doing.placed.stint.roles.find(
        (other, index) => other.name === 'arm' && doing.placed.planned.assigned[index] === arm.id,
      );
      const poses: [string, string][] =
        own === undefined
          ? [[poseAt(armLane, doing.startS, startPose), role.at]]
          : [
              [own.at, role.at],
              [own.to, role.to],
            ];
      const wrong = poses.find(([pose, place]) => placeOf.get(pose) !== place);
      const moving =
        own === undefined
          ? armLane?.doings.find(
              (other) => other.kind === 'move' && other.startS < doing.endS && doing.startS < other.endS,
            )
          : undefined;
      const boards = role.startOn !== role.endOn && own !== undefined && own.at !== own.to;
      if (wrong === undefined && moving === undefined && !boards) continue;
      findings.push(
        noticed('replay/plate-is-where-the-rider-is', {
          title: `${arm.id} is not still at ${lane.who}'s place during ${nameOf(doing)}`,
          why:
            wrong !== undefined
              ? `${lane.who} is at ${wrong[1]}; the arm is at ${wrong[0]} (${placeOf.get(wrong[0]) ?? 'no place'})`
              : moving !== undefined
                ? `the arm moves ${petSpan(moving.startS, moving.endS)}`
                : 'an arm does not move while somebody boards or leaves it',
          mend: 'bring the arm there first and hold it still',
          eva: lane.eva,
          person: lane.who,
          stint: doing.placed.stint.key,
          petS: doing.startS,
          span: role.span,
        }),
      );
    }
  }
  return findings;
}

function poseAt(lane: Lane | undefined, petS: number, startPose: string): string {
  const last = lane?.doings.findLast((doing) => doing.endS <= petS);
  return (last === undefined ? null : endsOf(last, '').to) ?? startPose;
}

/** Who stands on the plate while the arm does something: boarded by earlier work and not left since. */
function riderAt(lanes: readonly Lane[], arm: string, doing: Doing): string | null {
  for (const lane of lanes) {
    const last = lane.doings.findLast((one) => one.kind === 'stint' && one.endS <= doing.startS);
    if (last?.kind === 'stint' && last.role.endOn === arm) return lane.who;
  }
  return null;
}

/** The quickest chain of transfers, by rounds over all of them. */
function chainS(arm: Arm, from: string, to: string, loaded: boolean): number {
  const best = new Map<string, number>([[from, 0]]);
  for (let round = 0; round < arm.poses.length; round++) {
    for (const transfer of arm.transfers) {
      const timeS = loaded ? transfer.loadedS : transfer.emptyS;
      if (timeS === null) continue;
      const ends: [string, string][] = [[transfer.from, transfer.to]];
      if (!transfer.oneWay) ends.push([transfer.to, transfer.from]);
      for (const [a, b] of ends) {
        const time = (best.get(a) ?? Number.POSITIVE_INFINITY) + timeS;
        if (time < (best.get(b) ?? Number.POSITIVE_INFINITY)) best.set(b, time);
      }
    }
  }
  return best.get(to) ?? Number.POSITIVE_INFINITY;
}
