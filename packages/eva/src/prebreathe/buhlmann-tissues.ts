import { requireInRange } from '@handrail/quantity/in-range';

/**
 * The sixteen nitrogen tissues of Bühlmann's ZH-L16C set (with 1b): a second opinion beside the single long half-time, with its own
 * limit by tissue. It comes from diving; its values at altitude pressures are an extrapolation, and no operator's limit.
 * @source [BUHL02] Table 25 p. 158
 */
export interface BuhlmannTissue {
  readonly id: string;
  readonly halfTimeS: number;
  /** Pa */
  readonly aPa: number;
  readonly b: number;
}

const row = (id: string, halfTimeMin: number, aBar: number, b: number): BuhlmannTissue => ({
  id,
  halfTimeS: halfTimeMin * 60,
  aPa: aBar * 1e5,
  b,
});

export const BUHLMANN_TISSUES: readonly BuhlmannTissue[] = [
  row('1', 4.0, 1.2599, 0.505),
  row('1b', 5.0, 1.1696, 0.5578),
  row('2', 8.0, 1.0, 0.6514),
  row('3', 12.5, 0.8618, 0.7222),
  row('4', 18.5, 0.7562, 0.7825),
  row('5', 27.0, 0.62, 0.8126),
  row('6', 38.3, 0.5043, 0.8434),
  row('7', 54.3, 0.441, 0.8693),
  row('8', 77, 0.4, 0.891),
  row('9', 109, 0.375, 0.9092),
  row('10', 146, 0.35, 0.9222),
  row('11', 187, 0.3295, 0.9319),
  row('12', 239, 0.3065, 0.9403),
  row('13', 305, 0.2835, 0.9477),
  row('14', 390, 0.261, 0.9544),
  row('15', 498, 0.248, 0.9602),
  row('16', 635, 0.2327, 0.9653),
];

/** Lowest ambient pressure that a tissue at this tension tolerates, Pa: (P − a) b; 0 where it tolerates vacuum. @source [BUHL02] */
export function toleratedAmbientPa(tissue: BuhlmannTissue, tissuePa: number): number {
  const tension = requireInRange('tissue nitrogen', tissuePa, { min: 0, max: 1e6, unit: 'Pa' });
  return Math.max(0, (tension - tissue.aPa) * tissue.b);
}
