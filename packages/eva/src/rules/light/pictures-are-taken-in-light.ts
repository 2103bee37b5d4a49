import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = `
${exampleOrbit(240)}window bay-lit "Bay in sunlight" computed=lit place=bay
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; photograph bay } }
`;
const timeline = (work: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 ${work} look/see
EV1 2:10-2:14 bay > porch
EV2 2:14-2:19 in
EV1 2:19-2:24 in
hatch 2:24-2:29`;

export const picturesAreTakenInLight = defineRule({
  title: 'Pictures are taken while the place has light',
  broken: 'A picture is planned while the place has no sunlight',
  severity: 'note',
  why: 'Lamps of helmet and camera light what is near. A picture of a whole bay wants the Sun; the photographer should know beforehand which it will be.',
  source: 'common practice',
  *check(facts) {
    const lights = facts.campaign.windows.filter(({ computed }) => computed?.what === 'lit' && computed.filled);
    if (lights.length === 0) return;
    for (const { eva, steps } of facts.evas) {
      for (const { stint, planned, index, startS, endS, who } of steps) {
        const step = stint.steps[index];
        if (step?.verb !== 'photograph') continue;
        const place = stint.roles[0]?.at;
        for (const window of lights) {
          if (window.computed?.place !== place) continue;
          const from = eva.petZeroUtcMs + startS * 1000;
          const to = eva.petZeroUtcMs + endS * 1000;
          if (window.intervals.some(([a, b]) => a < to && from < b)) continue;
          const next = window.intervals.find(([a]) => a >= to);
          yield {
            where: { eva: eva.eva, person: who, stint: planned.stint, step: index, petS: startS, span: step.span },
            why: `at PET ${formatPet(startS)} the place is dark by ${window.title}${next === undefined ? '' : `; light comes at PET ${formatPet(Math.ceil((next[0] - eva.petZeroUtcMs) / 60_000) * 60)}`}`,
            mend: 'plan for lamps and flash, or take the picture later',
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:30-0:50') },
    satisfies: { campaign, timeline: timeline('1:20-1:40') },
  },
});
