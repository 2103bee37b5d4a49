import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';

export const inspiredCarbonDioxideStaysLow = defineRule({
  title: 'CO2 breathed in stays below the warning level of the suit',
  broken: 'Work is so hard that too much CO2 is breathed in',
  severity: 'warning',
  why: 'What is breathed out lingers in the helmet, the more the harder the work. Above the level the work must slow, and the plan with it.',
  source: '[KIM20]',
  *check(facts) {
    for (const { eva, suppliesOf } of facts.evas) {
      for (const person of facts.outside) {
        const reading = suppliesOf(person.id);
        if (reading === null || !reading.known) continue;
        const limitPa = reading.suit.specification.constants.carbonDioxideWarningPa.likely;
        // One finding for each effort: its first stretch stands for all.
        const told = new Set<string>();
        for (const { startS, effort, metabolicW, inspiredPa, reason, warns } of reading.use.inspired) {
          if (warns === 'no' || told.has(effort)) continue;
          told.add(effort);
          const where = { eva: eva.eva, person: person.id, petS: startS, span: person.span };
          const rate = `"${effort}" at ${Math.round(metabolicW.likely)} W likely, ${Math.round(metabolicW.worst)} W worst`;
          if (inspiredPa === null) yield { severity: 'unknown', where, why: `${rate}: ${reason ?? 'not measured'}` };
          else {
            yield {
              where,
              why: `${rate}: ${Math.round(inspiredPa.likely)} Pa likely, ${Math.round(inspiredPa.worst)} Pa worst; the level is ${limitPa} Pa; first at PET ${formatPet(startS)}`,
              mend: 'lighter work, a rest after it, or the other person',
            };
          }
        }
      }
    }
  },
  examples: {
    violates: {
      campaign: inSuit(exampleSuit('worn', { 'carbon-dioxide-warning': '"1.1 kPa"' })),
      timeline: SIX_HOURS_OUT,
    },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
