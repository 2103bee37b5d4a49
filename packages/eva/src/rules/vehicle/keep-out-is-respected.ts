import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
task look rank=1 eva=day { stint see who=EV1 at=PLACE { inspect PLACE } }
`;
const timeline = (way: string, back: string): string => `${OUT}EV1 0:10-0:18 ${way}
EV1 0:18-0:24 look/see
EV1 0:24-0:32 ${back}
EV2 0:32-0:37 in
EV1 0:37-0:42 in
hatch 0:42-0:47`;

export const keepOutIsRespected = defineRule({
  title: 'Nobody works in or passes through a keep-out',
  broken: 'Somebody is in a keep-out',
  severity: 'error',
  why: 'A place is kept out of for what is there: radiators, optics, thrusters, sharp edges.',
  source: 'common practice',
  *check(facts) {
    const keepOut = new Set(facts.campaign.vehicle.places.filter((place) => place.keepOut).map((place) => place.id));
    for (const { eva, courses } of facts.evas) {
      for (const [person, course] of courses) {
        for (const stretch of course) {
          const through = [stretch.place, ...stretch.path, stretch.to].find((place) => keepOut.has(place));
          if (through === undefined || stretch.kind === 'wait') continue;
          yield {
            where: {
              eva: eva.eva,
              person,
              stint: stretch.stint?.key ?? null,
              petS: stretch.startS,
              span: stretch.stint?.span ?? null,
            },
            why: `${person} is at ${through}, a keep-out, from PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}`,
            mend: 'another way round, or have the hazard controlled and the keep-out lifted in the campaign',
          };
          break;
        }
      }
    }
  },
  examples: {
    violates: {
      campaign: campaign.replaceAll('PLACE', 'nozzle'),
      timeline: timeline('porch > nozzle', 'nozzle > porch'),
    },
    satisfies: {
      campaign: campaign.replaceAll('PLACE', 'tip'),
      timeline: timeline('porch > bay > tip', 'tip > bay > porch'),
    },
  },
});
