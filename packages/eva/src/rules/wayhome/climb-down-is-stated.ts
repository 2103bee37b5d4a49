import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (climb: string): string => `
person crane-operator role=arm
arm crane operator=crane-operator start=near {
    pose near place=bay${climb}
    pose away
    transfer near away empty="2 min" loaded="4 min"
}
task one rank=1 eva=day {
    stint get-on who=EV1 at=bay end-on=crane arm=crane pose=near { mount crane; safe crane by=arm }
    stint get-off who=EV1 start-on=crane arm=crane pose=near { dismount crane }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1+crane 0:20-0:26 one/get-on
EV1+crane 0:26-0:30 one/get-off
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const climbDownIsStated = defineRule({
  title: 'Every pose at which somebody stands on the plate has a way down if the arm stops',
  broken: 'If the arm stops here, no way down is stated',
  severity: 'warning',
  why: 'An arm can stop at any instant. Without a way down that has been looked at, whoever is on it waits for the arm, and their way home is not known.',
  source: 'common practice',
  *check(facts) {
    const told = new Set<string>();
    for (const { eva } of facts.evas) {
      for (const planned of eva.stints) {
        const stint = facts.stints.get(planned.stint);
        const on = stint?.roles.map((role) => role.endOn ?? role.startOn).find((arm) => arm !== null) ?? null;
        const arm = facts.campaign.arms.find((candidate) => candidate.id === on);
        const role = stint?.roles.find((one) => one.name === 'arm');
        if (stint === undefined || arm === undefined || role === undefined) continue;
        for (const id of new Set([role.at, role.to])) {
          const pose = arm.poses.find((candidate) => candidate.id === id);
          if (pose === undefined || pose.climbDown !== null || told.has(`${arm.id} ${id}`)) continue;
          told.add(`${arm.id} ${id}`);
          yield {
            where: { eva: eva.eva, stint: planned.stint, petS: planned.startS, span: pose.span },
            why: `"${stint.title}" has somebody on the plate at ${pose.title}, and the pose names no climb-down`,
            mend: `write climb-down PLACE "minutes" in pose ${pose.id}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign(' { climb-down bay "3 min" }'), timeline },
  },
});
