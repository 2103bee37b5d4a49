import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { sharedFrom } from '../../wayhome/committed-stretches.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = `
person crane-operator role=arm
arm crane operator=crane-operator start=near {
    pose near place=bay
    pose far place=tip { climb-down tip "2 min" }
    transfer near far empty="2 min" loaded="4 min"
}
arm hoist operator=crane-operator start=low {
    pose low place=side
    pose high place=up { climb-down up "2 min" }
    transfer low high empty="2 min" loaded="4 min"
}
task one rank=1 eva=day {
    stint get-on who=EV1 at=bay end-on=crane arm=crane pose=near { mount crane; safe crane by=arm }
    stint get-off who=EV1 start-on=crane arm=crane pose=near { dismount crane }
}
task two rank=2 eva=day {
    stint get-on who=EV2 at=side end-on=hoist arm=hoist pose=low { mount hoist; safe hoist by=arm }
    stint get-off who=EV2 start-on=hoist arm=hoist pose=low { dismount hoist }
}
`;
const timeline = (second: readonly string[]): string => `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1+crane 0:20-0:26 one/get-on
EV1+crane 0:26-0:30 one/get-off
EV2+hoist ${second[0]} two/get-on
EV2+hoist ${second[1]} two/get-off
EV1 0:50-0:54 bay > porch
EV2 0:50-0:55 side > porch
EV2 0:55-1:00 in
EV1 1:00-1:05 in
hatch 1:05-1:10`;

export const committedStretchesAreNotShared = defineRule({
  title: 'The two are never both where no safe stop is in reach, in any execution',
  broken: 'Both are where no safe stop is in reach',
  severity: 'error',
  why: 'Whoever is free can help. On a plate without a way down, or with something open that nothing closes from there, nobody is.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      const surface = wayHomeOf(facts, evaFacts);
      // A clock alone threatens the hardware; the crew can still leave.
      const held = surface.committed.filter((one) => one.causes.some((cause) => cause !== 'clock'));
      const [first, second] = surface.progress.persons;
      for (const one of held.filter((stretch) => stretch.person === first)) {
        for (const two of held.filter((stretch) => stretch.person === second)) {
          const fromS = sharedFrom(surface.pairs, one, two);
          if (fromS === null) continue;
          const isPlanned = two.startS < one.endS && one.startS < two.endS;
          const when = isPlanned
            ? `PET ${formatPet(Math.max(one.startS, two.startS))} to ${formatPet(Math.min(one.endS, two.endS))}`
            : `not as planned, but from PET ${formatPet(fromS)} on where one is early or late`;
          yield {
            where: {
              eva: evaFacts.eva.eva,
              person: one.person,
              stint: one.entry,
              petS: Math.max(one.startS, two.startS),
            },
            why: `${when}: ${one.person}: ${one.why[0]}; ${two.person}: ${two.why[0]}`,
            mend: `let ${two.entry ?? two.person} begin after ${one.entry ?? one.person} is past it, by a join or an order`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline(['0:22-0:28', '0:28-0:32']) },
    satisfies: { campaign, timeline: timeline(['0:36-0:42', '0:42-0:46']) },
  },
});
