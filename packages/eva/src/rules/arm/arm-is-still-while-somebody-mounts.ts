import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
person operator role=arm
arm crane "Crane" operator=operator start=low {
    pose low "Low" place=bay { climb-down bay "1 min" }
    pose high "High" place=tip { climb-down tip "1 min" }
    transfer low high empty="3 min" loaded="5 min"
}
task get-on rank=1 eva=day {
    stint climb who=EV1 at=bay { inspect bay }
    stint swing who=crane pose=low to-pose=high { move crane }
}
`;
const timeline = (swing: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 get-on/climb
crane ${swing} get-on/swing
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const armIsStillWhileSomebodyMounts = defineRule({
  title: 'The arm stands still while somebody gets on or off, or works beside it',
  severity: 'error',
  why: 'An arm that moves while a person holds structure and plate together crushes or tears. It is safed first, and that is called.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses } of facts.evas) {
      for (const arm of facts.campaign.arms) {
        const moving = [
          ...eva.moves
            .filter((move) => move.who === arm.id)
            .map((move) => ({
              startS: move.startS,
              endS: move.endS,
              poses: [move.from, move.to],
              riders: [] as string[],
            })),
          ...eva.stints.flatMap((planned) => {
            const stint = facts.stints.get(planned.stint);
            const role = stint?.roles.find(
              (candidate, index) => candidate.name === 'arm' && planned.assigned[index] === arm.id,
            );
            if (stint === undefined || role === undefined || role.at === role.to) return [];
            const riders = stint.roles.flatMap((candidate, index) =>
              candidate.startOn === arm.id && candidate.endOn === arm.id ? [planned.assigned[index] ?? ''] : [],
            );
            return [{ startS: planned.startS, endS: planned.endS, poses: [role.at, role.to], riders }];
          }),
        ];
        for (const swing of moving) {
          const places = swing.poses.map((pose) => arm.poses.find((candidate) => candidate.id === pose)?.place ?? null);
          for (const [person, course] of courses) {
            if (swing.riders.includes(person)) continue;
            const caught = course.find(
              (stretch) =>
                stretch.kind === 'work' &&
                stretch.startS < swing.endS &&
                swing.startS < stretch.endS &&
                (stretch.on === arm.id || places.includes(stretch.place)),
            );
            if (caught === undefined) continue;
            yield {
              where: {
                eva: eva.eva,
                person,
                stint: caught.stint?.key ?? null,
                petS: Math.max(caught.startS, swing.startS),
                span: caught.stint?.span ?? null,
              },
              why: `${arm.title} moves from PET ${formatPet(swing.startS)} to ${formatPet(swing.endS)} while ${person} is ${caught.on === arm.id ? 'on its plate' : `at ${caught.place}, where it passes`}`,
              mend: 'join the two: the arm waits until the person calls clear',
            };
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:15-0:18') },
    satisfies: { campaign, timeline: timeline('0:35-0:38') },
  },
});
