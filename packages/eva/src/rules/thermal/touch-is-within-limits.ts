import { formatDuration } from '@handrail/quantity/time';
import { touchVerdicts } from '../../thermal/touch-temperature.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (most: string): string => `
hardware cover-one kind=cover at=bay state=closed
touch-limit longest="30 s" lowest="-110 °C" highest="110 °C" source="invented"
touch-limit any-time=#true lowest="-40 °C" highest="60 °C" source="invented"
surface-temperature cover-one least="-20 °C" most="${most}" source="invented"
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; open cover-one } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const touchIsWithinLimits = defineRule({
  title: 'Nobody touches a surface that is too hot or too cold for so long a touch',
  broken: 'A surface is too hot or too cold to be touched so long',
  severity: 'error',
  why: 'Heat and cold go through a glove in seconds to minutes. The hand is taken as on the piece for its even share of the step; a step with a tool touches nothing by hand.',
  source: 'common practice',
  *check(facts) {
    const { touchLimits, surfaceTemperatures } = facts.campaign;
    for (const { eva, steps } of facts.evas) {
      for (const { stint, planned, effects, index, startS, endS, who } of steps) {
        const sentence = stint.steps[index];
        if (sentence === undefined || sentence.objects.length === 0 || sentence.by === 'arm') continue;
        if (sentence.tool !== null || effects?.tools.some((use) => use.steps.includes(index)) === true) continue;
        for (const object of sentence.objects) {
          const surface = surfaceTemperatures.find(({ hardware }) => hardware === object);
          if (surface === undefined) continue;
          const where = {
            eva: eva.eva,
            person: who,
            stint: planned.stint,
            step: index,
            petS: startS,
            span: sentence.span,
          };
          const title = facts.pieces.get(object)?.title ?? object;
          const band = `${celsius(surface.leastK)} to ${celsius(surface.mostK)}`;
          if (touchLimits.length === 0) {
            yield { severity: 'unknown', where, why: `${title} may be ${band}, and no touch-limit is stated` };
            continue;
          }
          const contactS = (endS - startS) / sentence.objects.length;
          const surfaceK = { low: surface.leastK, high: surface.mostK };
          const [verdict] = touchVerdicts(touchLimits, [{ of: object, surfaceK, contactS }]);
          if (verdict === undefined || verdict.holds) continue;
          const allowed = verdict.allowedS === 0 ? 'not at all' : `up to ${formatDuration(verdict.allowedS ?? 0)}`;
          yield {
            where,
            why: `${title} may be ${band} and is touched for ${formatDuration(contactS)}: ${(verdict.because ?? '').replaceAll('-', ' ')}; at these temperatures it may be touched ${allowed}`,
            mend: 'another light, a tool or handle, or more and shorter touches',
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('80 °C'), timeline },
    satisfies: { campaign: campaign('50 °C'), timeline },
  },
});

function celsius(kelvin: number): string {
  return `${Math.round(kelvin - 273.15)} °C`;
}
