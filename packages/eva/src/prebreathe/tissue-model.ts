import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { rateConstantPerS } from './tissue-nitrogen.ts';

/** One exponential tissue. */
export interface Compartment {
  readonly id: string;
  readonly halfTimeS: SourcedValue;
  /** Tension when the first stage begins. */
  readonly startNitrogenPa: SourcedValue;
}

/**
 * The tissue model and the operator's limit. Nothing is built in: half-time, start and limit belong together and to their source.
 */
export interface TissueModel {
  readonly compartments: readonly Compartment[];
  /** Water vapour taken off the pressure before nitrogen is counted: 0 in the dry convention. */
  readonly vapourPa: number;
  /** Pressure of the suit outside. */
  readonly suitPressurePa: number;
  /** Greatest tissue nitrogen over suit pressure that the operator accepts. */
  readonly ratioLimit: SourcedValue;
  /**
   * Decimals at which the ratio is rounded before it is compared, where the limit's source does so (published staged protocols meet
   * 1.65 only when rounded to two); null: compared as computed, the cautious reading. Time still needed is never rounded.
   */
  readonly comparedDecimals: number | null;
  /**
   * Added to the rate constant per mL/kg/min of oxygen uptake while exercising, 1/s; null: exercise earns nothing, the cautious reading.
   * @source [C04] Eq. 5 for the form k = λ·VO2 + k0
   */
  readonly exerciseRatePerSPerVo2: SourcedValue | null;
}

/** Printed with every result. */
export const NOT_MEDICAL_ADVICE = 'Not medical advice: the flight surgeon decides.';

/** @throws Fault `prebreathe/no-compartments`, `input/out-of-range` */
export function requireTissueModel(model: TissueModel): TissueModel {
  if (model.compartments.length === 0) {
    throw new Fault('prebreathe/no-compartments', 'a tissue model needs at least one compartment with its half-time');
  }
  for (const { id, halfTimeS, startNitrogenPa } of model.compartments) {
    for (const edge of [halfTimeS.low, halfTimeS.likely, halfTimeS.high]) {
      requireInRange(`${id}: half-time`, edge, { min: 10, max: 1e6, unit: 's' });
    }
    for (const edge of [startNitrogenPa.low, startNitrogenPa.likely, startNitrogenPa.high]) {
      requireInRange(`${id}: start nitrogen`, edge, { min: 0, max: 200_000, unit: 'Pa' });
    }
  }
  requireInRange('suit pressure', model.suitPressurePa, { min: 10_000, max: 110_000, unit: 'Pa' });
  for (const edge of [model.ratioLimit.low, model.ratioLimit.likely, model.ratioLimit.high]) {
    requireInRange('ratio limit', edge, { min: 0.5, max: 4, unit: '1' });
  }
  if (model.comparedDecimals !== null) {
    requireInRange('decimals compared', model.comparedDecimals, { min: 1, max: 12, unit: '1' });
  }
  if (model.exerciseRatePerSPerVo2 !== null) {
    const { low, likely, high } = model.exerciseRatePerSPerVo2;
    for (const edge of [low, likely, high]) {
      requireInRange('exercise rate', edge, { min: 0, max: 1e-3, unit: '1/s per mL/kg/min' });
    }
  }
  return model;
}

/** Rate constant while breathing at an oxygen uptake; at rest (null) the tissue's own. @source [C04] Eq. 5 */
export function stageRatePerS(halfTimeS: number, exerciseVo2: number | null, exerciseRate: number | null): number {
  const atRest = rateConstantPerS(halfTimeS);
  return exerciseVo2 === null || exerciseRate === null ? atRest : atRest + exerciseRate * exerciseVo2;
}
