import { stretchRates } from './stretch-rates.ts';
import type { SuitSpecification } from './suit-specification.ts';
import { providing, type SupplyCase, using } from './supply-case.ts';
import type { SupplyName } from './supply-curve.ts';
import { coverSpan, type SuitPerson, type SupplySpan, type WorkStretch } from './work-stretch.ts';

/** One line of a sum that can be done again by hand. Same unit as the supply's curve: kg, J for the battery. */
export interface SupplyLine {
  readonly what: string;
  readonly amount: number;
}

/**
 * What was used up to the end of the span, by what used it, in one case: "oxygen = body + leakage + purge". The lines add up to
 * `supplyUse(...).end[supply][case].used`.
 *
 * Water: heat over latent heat by where the heat came from, and a last line for heat not carried off: negative for what is still stored in
 * the body, positive for time in which the suit lost more than it made, absent for neither.
 * @param usedWaterKg from `supplyUse`, since only the course of the heat tells what is still stored
 * @throws as `supplyUse`
 */
export function supplySums(
  suit: SuitSpecification,
  person: SuitPerson,
  stretches: readonly WorkStretch[],
  span: SupplySpan,
  supplyCase: SupplyCase,
  usedWaterKg: number,
): Readonly<Record<SupplyName, readonly SupplyLine[]>> {
  let body = 0;
  let leakage = 0;
  let carbonDioxide = 0;
  let battery = 0;
  const heatJ = { body: 0, loads: 0, absorber: 0, surroundings: 0 };
  for (const stretch of coverSpan(stretches, { ...span, beyondS: 0 })) {
    const lastsS = stretch.endS - stretch.startS;
    const rates = stretchRates(suit, person, stretch, supplyCase);
    body += rates.oxygenKgPerS.body * lastsS;
    leakage += rates.oxygenKgPerS.leakage * lastsS;
    carbonDioxide += rates.carbonDioxideKgPerS * lastsS;
    battery += rates.batteryW * lastsS;
    heatJ.body += rates.heatPartsW.body * lastsS;
    heatJ.loads += rates.heatPartsW.loads * lastsS;
    heatJ.absorber += rates.heatPartsW.absorber * lastsS;
    heatJ.surroundings += rates.heatPartsW.surroundings * lastsS;
  }
  const perKg = providing(suit.constants.waterLatentHeatJPerKg, supplyCase);
  const water = [
    { what: 'heat of the body', amount: heatJ.body / perKg },
    { what: 'heat of the electrical loads', amount: heatJ.loads / perKg },
    { what: 'heat of the absorber', amount: heatJ.absorber / perKg },
    { what: 'heat from the surroundings', amount: heatJ.surroundings / perKg },
  ];
  const notCarriedOff = usedWaterKg - water.reduce((sum, { amount }) => sum + amount, 0);
  return {
    oxygen: nonZero([
      { what: 'body', amount: body },
      { what: 'leakage', amount: leakage },
      { what: 'purge', amount: using(suit.constants.oxygenPurgeKg, supplyCase) },
    ]),
    'carbon-dioxide': nonZero([{ what: 'body', amount: carbonDioxide }]),
    // Rounding alone is no line.
    water: nonZero([
      ...water,
      { what: 'heat not carried off', amount: Math.abs(notCarriedOff) < 1e-9 ? 0 : notCarriedOff },
    ]),
    battery: nonZero([{ what: 'electrical loads', amount: battery }]),
  };
}

function nonZero(lines: readonly SupplyLine[]): readonly SupplyLine[] {
  return lines.filter(({ amount }) => amount !== 0);
}
