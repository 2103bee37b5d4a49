/**
 * The supplies that a stamp demands. Every stated constant is taken at its worse end at once: if each end is a 10th or 90th percentile,
 * what is left is at least that much with 90 % or more, since what all ends together leave is an upper bound of what their
 * quantile takes. It must last as long as the durations in D may keep them out: to the wall that the timing proof keeps.
 */
import { formatPet } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';
import type { Finding } from '../finding/finding.ts';
import type { SupplyMargin } from '../proof/claim/claim-parts.ts';
import { proved } from '../proof/claim/prove-finding.ts';
import type { RuleFacts } from '../rules/rule-facts.ts';
import { petOfLimit, SUPPLY_NAMES } from '../suit/supply-curve.ts';
import { amountWords, supplyWords } from '../suit/supply-words.ts';

export function supplyMargins({ evas, outside }: RuleFacts): readonly SupplyMargin[] {
  const margins: SupplyMargin[] = [];
  for (const { eva, suppliesOf } of evas) {
    for (const person of outside) {
      const reading = suppliesOf(person.id);
      if (reading === null || !reading.known) continue;
      for (const supply of SUPPLY_NAMES) {
        const curve = reading.use.curves[supply];
        margins.push({
          eva: eva.eva,
          person: person.id,
          supply,
          atBothIn: reading.use.end[supply].worst.margin,
          unit: curve.unit,
          lastsUntilS: petOfLimit(curve, 'worst'),
          neededUntilS: Math.max(eva.bothInS, eva.wall?.petS ?? eva.bothInS),
        });
      }
    }
  }
  return margins;
}

/** What is not stated is told by the rules on supplies; here, what is stated and does not last. */
export function supplyFindings(campaign: Campaign, margins: readonly SupplyMargin[]): readonly Finding[] {
  return margins.flatMap(({ eva, person, supply, atBothIn, lastsUntilS, neededUntilS }) => {
    if (lastsUntilS === null || lastsUntilS >= neededUntilS) return [];
    const lastS = Math.floor(lastsUntilS);
    return [
      proved('proof/supplies-last-at-the-quantile', {
        title: `${supplyWords(supply)} of ${person} may reach its reserve before all durations have them in`,
        why: `in the worst case the reserve is reached at PET ${formatPet(lastS)}; for all durations within bounds both are in by PET ${formatPet(neededUntilS)} at the latest; with the hatch closed as planned ${atBothIn < 0 ? `${amountWords(supply, -atBothIn)} are lacking` : `${amountWords(supply, atBothIn)} are left above the reserve`}`,
        mend: `be in by PET ${formatPet(Math.floor(lastS / 60) * 60)} for all durations: suit-limit on ${person}, or less or lighter work`,
        eva,
        person,
        petS: lastS,
        span: campaign.people.find(({ id }) => id === person)?.span ?? null,
      }),
    ];
  });
}
