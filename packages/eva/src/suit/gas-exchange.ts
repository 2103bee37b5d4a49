import { Fault } from '@handrail/quantity/fault';
import { type Range, requireInRange } from '@handrail/quantity/in-range';

/**
 * Which published relation turns metabolic heat into oxygen used. They differ by up to 3.5 %: an answer must say which was taken.
 * `lusk-1924` and `peronnet-massicotte-1991` are tables by respiratory quotient, `weir-1949` is a linear equation.
 */
export type EnergyEquivalent = 'lusk-1924' | 'peronnet-massicotte-1991' | 'weir-1949';

/** Thermochemical kilocalorie, the unit of all three sources. */
export const J_PER_KCAL = 4184;
/** Ideal molar volume at 0 °C and 101 325 Pa, the STPD litre of respiration physiology. */
export const MOLAR_VOLUME_STPD_L = 22.413_97;
export const OXYGEN_KG_PER_MOL = 0.031_998;
export const CARBON_DIOXIDE_KG_PER_MOL = 0.044_009_5;

/** Rows (non-protein respiratory quotient, kcal per litre of oxygen STPD). */
const PERONNET: readonly (readonly [number, number])[] = [
  [0.7036, 4.851],
  [0.75, 4.904],
  [0.8, 4.962],
  [0.85, 5.02],
  [0.9, 5.078],
  [0.95, 5.136],
  [0.996, 5.189],
];

// oxlint-disable-next-line oxc/approx-constant -- the table's quotient for fat alone, not 1/√2
const LUSK_FAT = 0.707;

/** The quotients that each relation covers: fat alone to carbohydrate alone. */
export const RESPIRATORY_QUOTIENT_RANGE: Readonly<Record<EnergyEquivalent, Range>> = {
  'lusk-1924': { min: LUSK_FAT, max: 1, unit: '1' },
  'peronnet-massicotte-1991': { min: 0.7036, max: 0.996, unit: '1' },
  'weir-1949': { min: 0.7, max: 1, unit: '1' },
};
const METABOLIC_RANGE: Range = { min: 0, max: 2500, unit: 'W' };

/**
 * Energy set free per litre of oxygen, kcal per litre STPD, for a non-protein respiratory quotient.
 * The Lusk row is the straight line through its ends, which meets every printed row within 0.001.
 * @source [LUSK24] table; [PERONNET91] table; [WEIR49] 3.941 VO2 + 1.106 VCO2
 * @checked tests/reference/suit/gas-exchange.test.ts
 */
export function oxygenEnergyKcalPerL(relation: EnergyEquivalent, respiratoryQuotient: number): number {
  const range = Object.hasOwn(RESPIRATORY_QUOTIENT_RANGE, relation) ? RESPIRATORY_QUOTIENT_RANGE[relation] : undefined;
  if (range === undefined) {
    throw new Fault('suit/unknown-relation', `no energy relation is called ${relation}`, {
      advice: `use one of ${Object.keys(RESPIRATORY_QUOTIENT_RANGE).join(', ')}`,
    });
  }
  const rq = requireInRange(`respiratory quotient (${relation})`, respiratoryQuotient, range);
  if (relation === 'weir-1949') return 3.941 + 1.106 * rq;
  if (relation === 'peronnet-massicotte-1991') return interpolate(PERONNET, rq);
  return 4.686 + ((rq - LUSK_FAT) / (1 - LUSK_FAT)) * 0.361;
}

/** Weir's equation on measured gas, without nitrogen: metabolic heat in W from litres a minute STPD. @source [WEIR49] */
export function weirMetabolicW(oxygenLPerMin: number, carbonDioxideLPerMin: number): number {
  const oxygen = requireInRange('oxygen use', oxygenLPerMin, { min: 0, max: 10, unit: 'L/min' });
  const carbonDioxide = requireInRange('carbon dioxide output', carbonDioxideLPerMin, {
    min: 0,
    max: 10,
    unit: 'L/min',
  });
  return ((3.941 * oxygen + 1.106 * carbonDioxide) * J_PER_KCAL) / 60;
}

export interface GasExchange {
  readonly oxygenLPerMin: number;
  readonly carbonDioxideLPerMin: number;
  readonly oxygenKgPerS: number;
  readonly carbonDioxideKgPerS: number;
}

/**
 * Oxygen used and carbon dioxide given off at a metabolic rate. Steady work is assumed: no oxygen debt, no protein term.
 * @param metabolicW total metabolic heat, 0 to 2500 W
 * @source [LUSK24], [PERONNET91] or [WEIR49], as `relation` says
 */
export function gasExchange(metabolicW: number, respiratoryQuotient: number, relation: EnergyEquivalent): GasExchange {
  const power = requireInRange('metabolic rate', metabolicW, METABOLIC_RANGE);
  const litrePerS = power / (oxygenEnergyKcalPerL(relation, respiratoryQuotient) * J_PER_KCAL);
  const molPerS = litrePerS / MOLAR_VOLUME_STPD_L;
  return {
    oxygenLPerMin: litrePerS * 60,
    carbonDioxideLPerMin: litrePerS * 60 * respiratoryQuotient,
    oxygenKgPerS: molPerS * OXYGEN_KG_PER_MOL,
    carbonDioxideKgPerS: molPerS * respiratoryQuotient * CARBON_DIOXIDE_KG_PER_MOL,
  };
}

function interpolate(rows: readonly (readonly [number, number])[], x: number): number {
  for (let i = 1; i < rows.length; i++) {
    const [x1, y1] = rows[i] as readonly [number, number];
    const [x0, y0] = rows[i - 1] as readonly [number, number];
    if (x <= x1) return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  }
  return (rows.at(-1) as readonly [number, number])[1];
}
