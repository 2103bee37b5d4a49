import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Every id in the timeline is known to the campaign. */
export function namesExist(context: ReplayContext): Finding[] {
  const { campaign, timeline } = context;
  const findings: Finding[] = [];
  const requests = new Set(campaign.requests.map((request) => request.id));
  const joins = new Set(campaign.tasks.flatMap((task) => task.joins.map((join) => join.id)));
  const poses = new Set(campaign.arms.flatMap((arm) => arm.poses.map((pose) => pose.id)));
  const check = (known: boolean, what: string, id: string, eva: string | null, petS: number | null = null): void => {
    if (known) return;
    findings.push(
      noticed('replay/names-exist', {
        title: `The timeline names ${what} ${id}, which the campaign does not have`,
        why: `no ${what} has the id ${id}`,
        mend: 'plan again, or correct the name',
        eva,
        petS,
      }),
    );
  };
  for (const plan of timeline.evas) {
    const { eva } = plan;
    check(context.evas.has(eva), 'EVA', eva, eva);
    for (const task of plan.tasks) check(context.tasks.has(task), 'task', task, eva);
    for (const planned of plan.stints) {
      check(context.stints.has(planned.stint), 'stint', planned.stint, eva, planned.startS);
      for (const id of planned.assigned) {
        check(context.people.has(id) || context.arms.has(id), 'person or arm', id, eva, planned.startS);
      }
    }
    for (const passage of plan.passages) {
      if (passage.person !== null)
        check(context.people.has(passage.person), 'person', passage.person, eva, passage.startS);
    }
    for (const move of plan.moves) {
      const isArm = context.arms.has(move.who);
      check(isArm || context.people.has(move.who), 'person or arm', move.who, eva, move.startS);
      for (const point of new Set([move.from, move.to, ...move.path])) {
        if (isArm) check(poses.has(point), 'pose', point, eva, move.startS);
        else check(context.places.has(point) || point === context.hatch, 'place', point, eva, move.startS);
      }
      for (const item of move.carrying) check(context.hardware.has(item), 'piece of hardware', item, eva, move.startS);
      if (move.anchor !== null) check(context.hardware.has(move.anchor), 'anchor', move.anchor, eva, move.startS);
    }
    for (const hold of plan.holds) check(requests.has(hold.request), 'request', hold.request, eva, hold.askS);
    for (const join of plan.joins) check(joins.has(join.join), 'join', join.join, eva, join.releasedS);
  }
  for (const { task } of timeline.leftOut) check(context.tasks.has(task), 'task', task, null);
  return findings;
}
