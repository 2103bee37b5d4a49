import { formatDuration } from '@handrail/quantity/time';
import { elementAge } from '../../sky/element-age.ts';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = (epoch: string): string => `
${exampleOrbit(240, epoch)}window night "Eclipse" computed=night pad="30 s" shown-as=night
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const elementsAreFresh = defineRule({
  title: 'The orbit elements are fresh enough that their error stays below the pad that was thought enough',
  broken: 'The orbit elements are too old for the pads of the windows',
  severity: 'warning',
  why: 'Drag moves the vehicle along its track by an amount that grows with the square of the days. Windows are padded by that too, but a pad that is mostly age says that nobody has looked at the orbit lately; a reboost is in no pad at all.',
  source: 'LEVIT2011',
  *check(facts) {
    const orbit = facts.campaign.sky.orbit;
    const pads = facts.campaign.windows.flatMap(({ computed }) =>
      computed === undefined ? [] : [computed.statedPadS],
    );
    if (orbit === null || pads.length === 0) return;
    const leastPadS = Math.min(...pads);
    for (const { eva } of facts.evas) {
      const age = elementAge(orbit.elements, eva.petZeroUtcMs + eva.bothInS * 1000);
      if (age.timingErrorS <= leastPadS) continue;
      yield {
        where: { eva: eva.eva, petS: 0, span: orbit.span },
        why: `the elements are ${Math.abs(age.ageDays).toFixed(1)} d ${age.ageDays < 0 ? 'before their epoch' : 'old'} at the end of the EVA: ±${age.alongTrackErrorKm.toFixed(0)} km along the track, ±${formatDuration(age.timingErrorS)}; the least stated pad is ${formatDuration(leastPadS)}`,
        mend: 'get elements nearer to the EVA, or state pads that cover the error',
      };
    }
  },
  examples: {
    violates: { campaign: campaign('2031-04-10'), timeline },
    satisfies: { campaign: campaign('2031-05-01'), timeline },
  },
});
