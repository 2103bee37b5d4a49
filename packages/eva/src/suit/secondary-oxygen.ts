import { oxygenMassKg } from './oxygen-bottle.ts';
import type { SuitSpecification } from './suit-specification.ts';
import { byCase, providing, type SupplyCase, using } from './supply-case.ts';

/**
 * How long the second oxygen pack lasts, seconds: usable mass over the set flow. Worst takes the emptiest, warmest bottle and
 * the greatest flow. null: the suit has no such pack.
 */
export function secondaryOxygenS(suit: SuitSpecification): Readonly<Record<SupplyCase, number>> | null {
  const pack = suit.secondaryOxygen;
  if (pack === null) return null;
  return byCase((supplyCase) => {
    const mass = (pressurePa: number): number =>
      oxygenMassKg(suit.gasLaw, pressurePa, using(pack.temperatureK, supplyCase), providing(pack.volumeM3, supplyCase));
    const usableKg =
      mass(providing(pack.startPressurePa, supplyCase)) - mass(using(pack.reservePressurePa, supplyCase));
    return usableKg / using(pack.flowKgPerS, supplyCase);
  });
}
