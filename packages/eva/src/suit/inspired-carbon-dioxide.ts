import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';

/** One measured point: mean partial pressure of CO2 breathed in, and its standard deviation between people. */
export interface InspiredPoint {
  readonly metabolicW: number;
  readonly meanPa: number;
  readonly deviationPa: number;
}

/** What a suit's helmet gave when it was measured, by work rate; rising in `metabolicW`, at least two points. */
export interface InspiredCurve {
  readonly points: readonly InspiredPoint[];
  readonly source: string;
}

/** The work rates that the measurement covers, W. */
export function inspiredRange(curve: InspiredCurve): {
  readonly min: number;
  readonly max: number;
  readonly unit: 'W';
} {
  const first = curve.points[0];
  const last = curve.points.at(-1);
  if (first === undefined || last === undefined || curve.points.length < 2) {
    throw new Fault('suit/curve-too-short', 'an inspired CO2 curve needs at least two measured points', {
      values: { points: curve.points.length },
    });
  }
  for (let i = 1; i < curve.points.length; i++) {
    if ((curve.points[i] as InspiredPoint).metabolicW <= (curve.points[i - 1] as InspiredPoint).metabolicW) {
      throw new Fault('suit/curve-not-rising', 'the points of an inspired CO2 curve must rise in metabolic rate', {
        values: { index: i },
      });
    }
  }
  return { min: first.metabolicW, max: last.metabolicW, unit: 'W' };
}

/**
 * CO2 partial pressure breathed in at a work rate: straight lines between the measured points, no extrapolation.
 * @throws Fault `input/out-of-range` outside the measured work rates
 * @source [KIM20] for the published curve
 * @checked tests/reference/suit/inspired-carbon-dioxide.test.ts
 */
export function inspiredCarbonDioxidePa(
  curve: InspiredCurve,
  metabolicW: number,
): { readonly meanPa: number; readonly deviationPa: number } {
  const power = requireInRange('metabolic rate for the inspired CO2 curve', metabolicW, inspiredRange(curve));
  let i = 1;
  while (i < curve.points.length - 1 && (curve.points[i] as InspiredPoint).metabolicW < power) i++;
  const from = curve.points[i - 1] as InspiredPoint;
  const to = curve.points[i] as InspiredPoint;
  const share = (power - from.metabolicW) / (to.metabolicW - from.metabolicW);
  return {
    meanPa: from.meanPa + share * (to.meanPa - from.meanPa),
    deviationPa: from.deviationPa + share * (to.deviationPa - from.deviationPa),
  };
}
