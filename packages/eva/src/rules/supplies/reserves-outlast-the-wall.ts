import { formatDuration, formatPet } from '@handrail/quantity/time';
import { supplyWords } from '../../suit/supply-words.ts';
import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '../example-suit.ts';

export const reservesOutlastTheWall = defineRule({
  title: 'No supply reaches its reserve before the wall, for the work that is planned',
  broken: 'A supply may reach its reserve before the wall',
  severity: 'warning',
  why: 'The wall is what everybody counts on. If a supply can run down before it, the time between is not there to be used.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, suppliesOf } of facts.evas) {
      if (eva.wall === null) continue;
      for (const person of facts.outside) {
        const reading = suppliesOf(person.id);
        if (reading === null || !reading.known) continue;
        const worst = reading.use.limiting.worst;
        if (worst === null || worst.petS >= eva.wall.petS) continue;
        const likely = reading.use.limiting.likely;
        yield {
          where: { eva: eva.eva, person: person.id, petS: Math.floor(worst.petS), span: person.span },
          why: `${supplyWords(worst.supply)} reaches its reserve at PET ${formatPet(Math.floor(worst.petS))} in the worst case${
            likely === null
              ? ''
              : `, ${supplyWords(likely.supply)} at PET ${formatPet(Math.floor(likely.petS))} in the likely one`
          }; the wall is ${formatPet(eva.wall.petS)} (${eva.wall.cause}), ${formatDuration(Math.ceil(eva.wall.petS - worst.petS))} later`,
          mend: `take PET ${formatPet(Math.floor(worst.petS / 60) * 60)} as the wall: suit-limit on ${person.id}`,
        };
      }
    }
  },
  examples: {
    violates: {
      campaign: inSuit(exampleSuit('worn', { 'oxygen-start-pressure': '"3.9 MPa"' })),
      timeline: `${SIX_HOURS_OUT}\nwall 7:00 longest EVA`,
    },
    satisfies: { campaign: inSuit(exampleSuit('worn')), timeline: `${SIX_HOURS_OUT}\nwall 6:30 longest EVA` },
  },
});
