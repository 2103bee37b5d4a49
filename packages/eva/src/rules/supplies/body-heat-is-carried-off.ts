import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';

export const bodyHeatIsCarriedOff = defineRule({
  title: 'Heat stored in the body stays below the limit',
  broken: 'The cooling cannot carry off what the work makes',
  severity: 'error',
  why: 'What the cooling cannot take is stored in the body. At the limit work must stop, wherever the person is.',
  source: '[RY89]',
  *check(facts) {
    for (const { eva, suppliesOf } of facts.evas) {
      for (const person of facts.outside) {
        const reading = suppliesOf(person.id);
        if (reading === null || !reading.known) continue;
        const { likely, worst } = reading.use.heatStorage;
        const bad = likely.limitAtS === null ? worst : likely;
        if (bad.limitAtS === null || bad.limitAtS > eva.bothInS) continue;
        yield {
          severity: bad === likely ? 'error' : 'warning',
          where: { eva: eva.eva, person: person.id, petS: Math.floor(bad.limitAtS), span: person.span },
          why: `${bad === likely ? 'likely' : 'worst'}: ${Math.round(bad.peakJ / 1000)} kJ stored at most, the limit is ${Math.round(bad.limitJ / 1000)} kJ, reached at PET ${formatPet(Math.floor(bad.limitAtS))}`,
          mend: 'a rest before it, lighter work, or the other person',
        };
      }
    }
  },
  examples: {
    violates: { campaign: inSuit(exampleSuit('worn', { 'heat-removal-most': '"200 W"' })), timeline: SIX_HOURS_OUT },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: SIX_HOURS_OUT },
  },
});
