import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { inspiredCarbonDioxidePa, inspiredRange } from './inspired-carbon-dioxide.ts';
import type { SuitSpecification } from './suit-specification.ts';
import type { SuitPerson, WorkStretch } from './work-stretch.ts';

export interface InspiredWarning {
  readonly startS: number;
  readonly endS: number;
  readonly effort: string;
  readonly metabolicW: { readonly likely: number; readonly worst: number };
  /** null: no measurement at this work rate, and `reason` says which it covers. */
  readonly inspiredPa: { readonly likely: number; readonly worst: number } | null;
  readonly reason: string | null;
  readonly warns: 'no' | 'at-worst' | 'likely' | 'unknown';
}

/**
 * Whether the CO2 breathed in during a stretch passes the suit's warning level. `likely` is the mean at the likely work rate; `worst`
 * adds one standard deviation between people at the greatest work rate. Outside the measured work rates: unknown, with the reason.
 */
export function inspiredWarning(suit: SuitSpecification, person: SuitPerson, stretch: WorkStretch): InspiredWarning {
  const effort = suit.effortsW[stretch.effort] as SourcedValue;
  const likely = effort.likely * person.effortFactor.likely;
  const worst = effort.high * person.effortFactor.high;
  const { startS, endS } = stretch;
  const row = { startS, endS, effort: stretch.effort, metabolicW: { likely, worst } };
  if (suit.inspiredCurve === null) {
    return { ...row, inspiredPa: null, reason: 'the suit states no curve of CO2 breathed in', warns: 'unknown' };
  }
  const { min, max } = inspiredRange(suit.inspiredCurve);
  if (likely < min || worst > max) {
    const reason = `CO2 breathed in was measured from ${Math.round(min)} to ${Math.round(max)} W only`;
    return { ...row, inspiredPa: null, reason, warns: 'unknown' };
  }
  const atLikely = inspiredCarbonDioxidePa(suit.inspiredCurve, likely).meanPa;
  const atWorst = inspiredCarbonDioxidePa(suit.inspiredCurve, worst);
  const inspiredPa = { likely: atLikely, worst: atWorst.meanPa + atWorst.deviationPa };
  const warning = suit.constants.carbonDioxideWarningPa;
  const warns = inspiredPa.likely > warning.likely ? 'likely' : inspiredPa.worst > warning.low ? 'at-worst' : 'no';
  return { ...row, inspiredPa, reason: null, warns };
}
