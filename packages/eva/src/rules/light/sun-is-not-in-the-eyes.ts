import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = `
${exampleOrbit(240)}window glare "Sun in the eyes at the bay" computed=sun-in-eyes place=bay pad="20 s"
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = (work: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 ${work} look/see
EV1 2:10-2:14 bay > porch
EV2 2:14-2:19 in
EV1 2:19-2:24 in
hatch 2:24-2:29`;

export const sunIsNotInTheEyes = defineRule({
  title: 'The Sun does not stand in the line of sight of somebody who works',
  broken: 'The Sun stands in the eyes of somebody who works',
  severity: 'warning',
  why: 'Without air to scatter it, a low Sun behind the work leaves nothing to be seen of it, visor down or not; cameras are blinded too.',
  source: 'common practice',
  *check(facts) {
    const glares = facts.campaign.windows.filter(({ computed }) => computed?.what === 'sun-in-eyes' && computed.filled);
    if (glares.length === 0) return;
    for (const { eva, courses } of facts.evas) {
      for (const [person, course] of courses) {
        for (const stretch of course) {
          if (stretch.stint === null) continue;
          for (const window of glares) {
            if (window.computed?.place !== stretch.place || stretch.place !== stretch.to) continue;
            const met = window.intervals
              .map(([from, to]) => [(from - eva.petZeroUtcMs) / 1000, (to - eva.petZeroUtcMs) / 1000] as const)
              .map(([from, to]) => [Math.max(from, stretch.startS), Math.min(to, stretch.endS)] as const)
              .filter(([from, to]) => to > from);
            const first = met[0];
            if (first === undefined) continue;
            const insideS = met.reduce((sum, [from, to]) => sum + to - from, 0);
            yield {
              where: { eva: eva.eva, person, stint: stretch.stint.key, petS: Math.round(first[0]), span: window.span },
              why: `${person} works at ${stretch.place} from PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}; ${formatDuration(insideS)} of it with the Sun near the line of sight, from ${formatPet(Math.round(first[0]))}`,
              mend: 'start it earlier or later, have visors down by then, or turn to the other side',
            };
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:45-1:30') },
    satisfies: { campaign, timeline: timeline('0:14-0:24') },
  },
});
