import type { SupplyName } from './supply-curve.ts';

/** Constant rates of one stretch. */
export interface StretchRates {
  readonly oxygenKgPerS: number;
  readonly carbonDioxideKgPerS: number;
  readonly batteryW: number;
  /** Heat that arises in the suit; negative where it loses more than it makes. */
  readonly heatW: number;
  readonly heatRemovalMostW: number;
  readonly latentHeatJPerKg: number;
}

export interface StretchPiece {
  readonly startS: number;
  readonly endS: number;
  readonly used: Readonly<Record<SupplyName, number>>;
  /** Heat stored in the body at `endS`, J; never negative: getting cold is not modelled here. */
  readonly storedJ: number;
}

/**
 * One stretch as one or two pieces of steady use. While heat is stored the cooling runs at its most; once it is worked off the cooling
 * only follows the heat that arises, so the water curve has a kink there.
 */
export function integrateStretch(
  rates: StretchRates,
  startS: number,
  endS: number,
  storedAtStartJ: number,
): readonly StretchPiece[] {
  const piece = (fromS: number, toS: number, removedW: number, storedJ: number): StretchPiece => ({
    startS: fromS,
    endS: toS,
    used: {
      oxygen: rates.oxygenKgPerS * (toS - fromS),
      'carbon-dioxide': rates.carbonDioxideKgPerS * (toS - fromS),
      water: (removedW / rates.latentHeatJPerKg) * (toS - fromS),
      battery: rates.batteryW * (toS - fromS),
    },
    storedJ,
  });
  const excessW = rates.heatW - rates.heatRemovalMostW;
  if (excessW >= 0) return [piece(startS, endS, rates.heatRemovalMostW, storedAtStartJ + excessW * (endS - startS))];
  const following = Math.max(0, rates.heatW);
  if (storedAtStartJ === 0) return [piece(startS, endS, following, 0)];
  const workedOffS = startS + storedAtStartJ / -excessW;
  if (workedOffS >= endS) {
    return [piece(startS, endS, rates.heatRemovalMostW, storedAtStartJ + excessW * (endS - startS))];
  }
  return [piece(startS, workedOffS, rates.heatRemovalMostW, 0), piece(workedOffS, endS, following, 0)];
}
