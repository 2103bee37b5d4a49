/** What is left of one supply with the hatch closed, for the rules that ask for each of the four. */
import { formatPet } from '@handrail/quantity/time';
import { petOfLimit, type SupplyName } from '../suit/supply-curve.ts';
import { amountWords, sumWords, supplyWords } from '../suit/supply-words.ts';
import type { RuleMatch } from './define-rule.ts';
import type { RuleFacts } from './rule-facts.ts';

/**
 * Error where the likely case ends below the reserve, warning where only the worst does, unknown where a suit is stated and nothing can be
 * told. People without a suit are `supplies/suit-is-stated`'s affair.
 */
export function* supplyLeft(facts: RuleFacts, supply: SupplyName): Iterable<RuleMatch> {
  for (const { eva, suppliesOf } of facts.evas) {
    for (const person of facts.outside) {
      const reading = suppliesOf(person.id);
      if (reading === null) continue;
      const where = { eva: eva.eva, person: person.id, petS: eva.bothInS, span: person.span };
      if (!reading.known) {
        yield {
          severity: 'unknown',
          where,
          why: `what is left of ${supplyWords(supply)} cannot be told: ${reading.reason}`,
        };
        continue;
      }
      const ends = reading.use.end[supply];
      const supplyCase = ends.likely.margin < 0 ? 'likely' : ends.worst.margin < 0 ? 'worst' : null;
      if (supplyCase === null) continue;
      const curve = reading.use.curves[supply];
      const { start, reserve } = curve.traces[supplyCase];
      const words = sumWords(supply, { start, used: ends[supplyCase].used, reserve }, reading.sums[supplyCase][supply]);
      const atS = petOfLimit(curve, supplyCase);
      yield {
        title: `${person.id} comes back with too little ${supplyWords(supply)}${supplyCase === 'worst' ? ' in the worst case' : ''}`,
        severity: supplyCase === 'likely' ? 'error' : 'warning',
        where,
        why:
          `${supplyCase}: ${words.left} left with the hatch closed; ${words.reserve} may not be used (short by ${amountWords(supply, -ends[supplyCase].margin)})` +
          `${atS === null ? '' : `; the reserve is reached at PET ${formatPet(Math.floor(atS))}`}; likely ${amountWords(supply, ends.likely.left)}, best ${amountWords(supply, ends.best.left)}`,
        mend:
          atS === null
            ? `less or lighter work for ${person.id}`
            : `be in by PET ${formatPet(Math.floor(atS / 60) * 60)}, or give ${person.id} less or lighter work`,
      };
    }
  }
}
