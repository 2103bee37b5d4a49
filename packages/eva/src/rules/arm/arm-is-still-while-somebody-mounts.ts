import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import type { Stretch } from '../../timeline/person-course.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
person operator role=arm
arm crane "Crane" operator=operator start=low {
    pose low "Low" place=bay { climb-down bay "1 min" }
    pose high "High" place=tip { climb-down tip "1 min" }
    transfer low high empty="3 min" loaded="5 min"
}
task get-on rank=1 eva=day {
    stint climb who=EV1 at=bay end-on=crane arm=crane pose=low { mount crane }
    stint step-off who=EV1 start-on=crane arm=crane pose=low { dismount crane }
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
  title: 'The arm stands still while somebody gets on or off, or stands on it',
  broken: 'The arm moves while somebody is on its plate or getting on or off',
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
            return [{ startS: planned.startS, endS: planned.endS, riders }];
          }),
        ];
        for (const swing of moving) {
          for (const [person, course] of courses) {
            if (swing.riders.includes(person)) continue;
            const caught = course.find(
              (stretch) =>
                stretch.kind === 'work' &&
                stretch.startS < swing.endS &&
                swing.startS < stretch.endS &&
                touches(arm.id, stretch),
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
              why: `${arm.title} moves from PET ${formatPet(swing.startS)} to ${formatPet(swing.endS)} while ${person} is on its plate or getting on or off`,
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

/** On the plate at its start or its end: getting on, standing, getting off. */
function touches(arm: string, stretch: Stretch): boolean {
  const role = stretch.stint?.roles[stretch.role ?? 0];
  return role?.startOn === arm || role?.endOn === arm;
}
